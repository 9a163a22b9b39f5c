import { Agent, request } from 'node:http';

const agent = new Agent({ keepAlive: true });

/**
 * A post by the barest sender that there is: what a measurement of the server shows must not be the sender's own
 * work, and `fetch` here takes a tenth of a millisecond more for each answer.
 */
export function postTo(
  url: string,
  body: string,
  headers: Record<string, string>,
): Promise<{ status: number; text: string }> {
  return new Promise((done, fail) => {
    const length = String(Buffer.byteLength(body));
    const sent = request(
      url,
      { agent, method: 'POST', headers: { ...headers, 'content-length': length } },
      (answer) => {
        let text = '';
        answer.setEncoding('utf8');
        answer.on('data', (part: string) => {
          text += part;
        });
        answer.on('end', () => done({ status: answer.statusCode ?? 0, text }));
        answer.on('error', fail);
      },
    );
    sent.on('error', fail);
    sent.end(body);
  });
}
