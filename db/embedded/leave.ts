/**
 * Run by a process that is going down, which can no longer wait for answers: leaves the embedded server in its
 * stead and stops it when nobody else is there. Argument: the place, its sockets and the backend, as JSON.
 */
import { stopUnlessOthers } from './attendance.ts';
import type { Place } from './place.ts';

const { place, sockets, backend } = JSON.parse(process.argv[2] ?? '') as {
  place: Place;
  sockets: string;
  backend: number;
};
await stopUnlessOthers(place, sockets, backend);
