import { screenGiven } from '#app/server/screen-given.ts';
import { ProbesScreen } from './ProbesScreen.tsx';

export const dynamic = 'force-dynamic';

export default async function ProbesPage() {
  return <ProbesScreen given={await screenGiven()} />;
}
