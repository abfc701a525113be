// Changes as server-sent events (WHATWG HTML, section 9.2): a stream of text that a browser opens again when it breaks.

import { VERSION } from './answers.ts';
import type { Changes } from './changes.ts';

/** So long a browser waits before it opens a broken stream again, ms. */
const RETRY = 1000;

/** A reader who lets so many pieces lie has gone to sleep: it may ask again when it wakes. */
const MOST_WAITING = 1000;

export function eventStream(changes: Changes | undefined, ended: AbortSignal): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  let close = () => {};
  return new ReadableStream<Uint8Array>({
    start(controller) {
      let stopListening = () => {};
      let open = true;
      close = () => {
        if (!open) return;
        open = false;
        stopListening();
        ended.removeEventListener('abort', end);
      };
      const end = () => {
        close();
        controller.close();
      };
      controller.enqueue(encoder.encode(`retry: ${RETRY}\n\n`));
      ended.addEventListener('abort', end);
      if (changes !== undefined) {
        stopListening = changes.listen((change) => {
          if (!open) return;
          controller.enqueue(encoder.encode(`data: ${JSON.stringify({ version: VERSION, ...change })}\n\n`));
          if ((controller.desiredSize ?? 0) < -MOST_WAITING) end();
        });
      }
      if (ended.aborted) end();
    },
    cancel: () => close(),
  });
}
