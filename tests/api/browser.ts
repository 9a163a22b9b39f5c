import type { NextResponse } from 'next/server';

type Route = (request: Request) => Promise<NextResponse>;

/** Answer of a route, with its JSON read. */
export type Answer = { status: number; json: Record<string, unknown> };

/** A browser as far as routes see one: keeps cookies, names its origin, sends JSON. */
export class Browser {
  readonly jar = new Map<string, string>();
  private readonly host = 'kitchen.example:3000';

  async send(route: Route, text: string, headers: Record<string, string> = {}, query = ''): Promise<Answer> {
    const cookie = [...this.jar].map(([name, value]) => `${name}=${value}`).join('; ');
    const request = new Request(`http://${this.host}/api${query}`, {
      method: 'POST',
      body: text,
      headers: {
        host: this.host,
        origin: `http://${this.host}`,
        'content-type': 'application/json',
        ...(cookie === '' ? {} : { cookie }),
        ...headers,
      },
    });
    const response = await route(request);
    for (const { name, value, maxAge } of response.cookies.getAll()) {
      if (maxAge === 0) this.jar.delete(name);
      else this.jar.set(name, encodeURIComponent(value));
    }
    return { status: response.status, json: (await response.json()) as Record<string, unknown> };
  }

  post(route: Route, body: unknown, headers: Record<string, string> = {}, query = ''): Promise<Answer> {
    return this.send(route, JSON.stringify(body), headers, query);
  }
}

/** The keys of an answer's problems, in order. */
export const problemsIn = ({ json }: Answer): string[] =>
  ((json.problems ?? []) as { problem: string }[]).map(({ problem }) => problem);
