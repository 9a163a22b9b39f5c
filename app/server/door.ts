import { NextResponse } from 'next/server';
import type { Problem } from '#shared/problem.ts';
import type { Language } from '#shared/words/messages.ts';
import { faultOf } from './faults.ts';
import { said } from './said.ts';
import { foreign } from './same-origin.ts';

/** Thrown by what a route calls: the request ends with this status and these problems. */
export class Refused extends Error {
  readonly status: number;
  readonly problems: readonly Problem[];

  constructor(status: number, problems: readonly Problem[]) {
    super(`refused: ${problems.map(({ problem }) => problem).join(', ')}`);
    this.name = 'Refused';
    this.status = status;
    this.problems = problems;
  }
}

/** One problem of the request as a whole. */
export const refusal = (
  status: number,
  problem: string,
  remedy: string,
  values: Problem['values'] = {},
  field = '',
): Refused => new Refused(status, [{ field, problem, remedy, values }]);

/** The value of a cookie that came with the request; null = there is none. */
export function cookieOf(request: Request, name: string): string | null {
  const parts = (request.headers.get('cookie') ?? '').split(';').map((part) => part.trim());
  const found = parts.find((part) => part.startsWith(`${name}=`))?.slice(name.length + 1);
  if (found === undefined) return null;
  try {
    return decodeURIComponent(found);
  } catch {
    return found; // not of our making
  }
}

/** The language in which this device is answered. */
export const languageOf = (request: Request): Language =>
  cookieOf(request, 'language') === 'es' ? 'es' : 'en';

export const answerProblems = (
  request: Request,
  status: number,
  problems: readonly Problem[],
): NextResponse => NextResponse.json({ problems: said(problems, languageOf(request)) }, { status });

function answerError(request: Request, error: unknown): NextResponse {
  if (error instanceof Refused) return answerProblems(request, error.status, error.problems);
  const fault = faultOf(error);
  if (fault !== null) return answerProblems(request, 503, [fault]);
  console.error(error); // a fault of the program: its words are for those who run the server
  return answerProblems(request, 500, [
    { field: '', problem: 'program_fault', remedy: 'kept_here_retry', values: {} },
  ]);
}

/** A route that only reads: whatever is thrown is answered in words. */
export const answering =
  (handler: (request: Request) => Promise<NextResponse>) =>
  async (request: Request): Promise<NextResponse> => {
    try {
      return await handler(request);
    } catch (error) {
      return answerError(request, error);
    }
  };

/** A POST route: only our own pages may ask, and whatever is thrown is answered in words. */
export const door = (
  handler: (request: Request) => Promise<NextResponse>,
): ((request: Request) => Promise<NextResponse>) => {
  const answered = answering(handler);
  return async (request) => {
    const problem = foreign(request);
    return problem === null ? answered(request) : answerProblems(request, 403, [problem]);
  };
};
