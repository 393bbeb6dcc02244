/**
 * Runs one call at a time; while it runs only the newest request is kept, so that typing never queues up
 * work. A request that is overtaken answers undefined.
 */
export function latestOnly<I, R>(run: (input: I) => Promise<R>): (input: I) => Promise<R | undefined> {
  interface Next {
    input: I;
    settle: (result: R | undefined) => void;
    fail: (error: unknown) => void;
  }
  let busy = false;
  let next: Next | undefined;
  const pump = async (): Promise<void> => {
    if (busy || !next) return;
    const { input, settle, fail } = next;
    next = undefined;
    busy = true;
    try {
      settle(await run(input));
    } catch (error) {
      fail(error);
    } finally {
      busy = false;
      void pump();
    }
  };
  return input =>
    new Promise((settle, fail) => {
      next?.settle(undefined);
      next = { input, settle, fail };
      void pump();
    });
}
