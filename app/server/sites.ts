import 'server-only';
import { listSites } from '#db/load.ts';
import { getDb } from './db.ts';

/** Whether a kitchen was set up in this book. */
export const siteExists = async (): Promise<boolean> => (await listSites(await getDb())).length > 0;
