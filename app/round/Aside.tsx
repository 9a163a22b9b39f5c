import { CouldNotAside } from './CouldNotAside.tsx';
import type { FaceProps } from './given.ts';
import { HandsAside } from './HandsAside.tsx';
import { HeldAside } from './HeldAside.tsx';
import { ProbesAside } from './ProbesAside.tsx';
import { QuestionAside } from './QuestionAside.tsx';
import { StopAside } from './StopAside.tsx';
import { SummaryAside } from './SummaryAside.tsx';
import { WalkAside } from './WalkAside.tsx';
import { WhenAside } from './WhenAside.tsx';

/** Whatever the round asks or says in place of the pad. Nothing of it is needed before the first tap. */
export function Aside(props: FaceProps) {
  const { face } = props.state;
  switch (face.kind) {
    case 'entry':
      return null;
    case 'question':
      return <QuestionAside {...props} ask={face.ask} />;
    case 'held':
      return <HeldAside {...props} spot={face.spot} seconds={face.seconds} />;
    case 'stop':
      return <StopAside {...props} saved={face.saved} />;
    case 'could_not':
      return <CouldNotAside {...props} />;
    case 'hands':
      return <HandsAside {...props} />;
    case 'probes':
      return <ProbesAside {...props} />;
    case 'when':
      return <WhenAside {...props} />;
    case 'walk':
      return <WalkAside {...props} />;
    case 'summary':
      return <SummaryAside {...props} />;
  }
}
