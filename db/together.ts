import type { Db } from './connect.ts';

/** Work of one caller on a site's chain; what it is for is the doer's to know. */
type Waiting<Post, Answer> = { post: Post; done: (answer: Answer) => void; fail: (cause: unknown) => void };

/** Does several posts in one transaction and answers each, in their order. All or none of them. */
type DoTogether<Post, Answer> = (posts: readonly Post[]) => Promise<Answer[]>;

/**
 * Posts to one chain that come while another is being written wait for it, and are then written together: one lock,
 * one commit to disk. Each caller is answered after that commit, and no later than those beside it. When a
 * transaction of several fails, each is tried alone, so that one of them harms nobody else.
 */
export class Together<Post, Answer> {
  private readonly queues = new WeakMap<Db, Map<string, Waiting<Post, Answer>[]>>();
  private readonly weight: (post: Post) => number;
  private readonly most: number;

  /** @param weight how much a post is; what waits is taken until it is `most` together, and at least one */
  constructor(weight: (post: Post) => number, most: number) {
    this.weight = weight;
    this.most = most;
  }

  add(db: Db, site: string, post: Post, work: DoTogether<Post, Answer>): Promise<Answer> {
    const queues = this.queues.get(db) ?? new Map<string, Waiting<Post, Answer>[]>();
    this.queues.set(db, queues);
    return new Promise((done, fail) => {
      const waiting = { post, done, fail };
      const queue = queues.get(site);
      if (queue !== undefined) {
        queue.push(waiting); // whoever drains it comes to this one
        return;
      }
      queues.set(site, [waiting]);
      void this.drain(queues, site, work);
    });
  }

  private async drain(
    queues: Map<string, Waiting<Post, Answer>[]>,
    site: string,
    work: DoTogether<Post, Answer>,
  ): Promise<void> {
    for (;;) {
      const next = this.taken(queues.get(site) ?? []);
      if (next.length === 0) break;
      await answerAll(next, work);
    }
    queues.delete(site); // nothing can have come between: no waiting lies between the last look and this line
  }

  private taken(queue: Waiting<Post, Answer>[]): Waiting<Post, Answer>[] {
    let [count, sum] = [0, 0];
    for (const { post } of queue) {
      sum += this.weight(post);
      if (count > 0 && sum > this.most) break;
      count += 1;
    }
    return queue.splice(0, count);
  }
}

async function answerAll<Post, Answer>(
  those: readonly Waiting<Post, Answer>[],
  work: DoTogether<Post, Answer>,
): Promise<void> {
  try {
    const answers = await work(those.map(({ post }) => post));
    for (const [n, { done }] of those.entries()) done(answers[n] as Answer);
  } catch (cause) {
    const [only, another] = those;
    if (another === undefined) only?.fail(cause);
    else for (const one of those) await answerAll([one], work);
  }
}
