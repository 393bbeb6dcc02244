/** What a desk and its worker say to each other: plain data only. */
export interface ToWorker {
  id: number;
  task: string;
  input: unknown;
}

export type FromWorker =
  | { id: number; kind: 'progress'; done: number; of: number; best: number }
  | { id: number; kind: 'done'; result: unknown }
  | { id: number; kind: 'failed'; words: string };

/** A worker as the desk sees it, whatever runs it. */
export interface WorkerPort {
  post(message: ToWorker): void;
  listen(hear: (message: FromWorker) => void, fail: (error: Error) => void): void;
  end(): void;
}
