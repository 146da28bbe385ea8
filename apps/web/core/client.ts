/** The page's end of the workers: calls with answers. */
import type { Call, Quick, Reply, Thorough } from './api.js';
import { fileText, isSingleFile } from './files.js';

// biome-ignore lint/suspicious/noExplicitAny: any function of an interface
type Answer<F> = F extends (...args: any[]) => infer R ? Awaited<R> : never;
// biome-ignore lint/suspicious/noExplicitAny: any function of an interface
type Given<F> = F extends (...args: infer A extends any[]) => unknown ? A : never;

interface Waiting {
  readonly done: (value: unknown) => void;
  readonly failed: (reason: Error) => void;
}

export class Client<A extends object> {
  private worker: Worker | undefined;
  private readonly ready: Promise<Worker>;
  private readonly waiting = new Map<number, Waiting>();
  private next = 1;

  constructor(private readonly begin: () => Worker) {
    this.ready = this.start();
  }

  private async start(): Promise<Worker> {
    const worker = isSingleFile()
      ? new Worker(URL.createObjectURL(new Blob([await fileText('worker.js')], { type: 'text/javascript' })))
      : this.begin();
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      const w = this.waiting.get(data.id);
      this.waiting.delete(data.id);
      if (data.fault === undefined) w?.done(data.value);
      else w?.failed(new Error(data.fault));
    };
    worker.onerror = (e) => {
      for (const w of this.waiting.values()) w.failed(new Error(e.message || 'the worker could not be started'));
      this.waiting.clear();
    };
    this.worker = worker;
    return worker;
  }

  async call<K extends keyof A & string>(name: K, ...args: Given<A[K]>): Promise<Answer<A[K]>> {
    const worker = this.worker ?? (await this.ready);
    return new Promise<Answer<A[K]>>((done, failed) => {
      const id = this.next++;
      this.waiting.set(id, { done: done as (v: unknown) => void, failed });
      worker.postMessage({ id, name, args } satisfies Call);
    });
  }
}

/** Two workers: one that answers at once, one for what takes longer (files, remedies). The second starts when first needed. */
export const quick = new Client<Quick>(
  () => new Worker(new URL('./quick.worker.ts', import.meta.url), { type: 'module' }),
);
let slow: Client<Thorough> | undefined;
export const thorough = (): Client<Thorough> => {
  slow ??= new Client<Thorough>(() => new Worker(new URL('./thorough.worker.ts', import.meta.url), { type: 'module' }));
  return slow;
};
