// The body of a request, up to a size.

/** The bytes that were sent, or undefined when there are more than `most`: the rest is then left unread. */
export async function readBody(request: Request, most: number): Promise<Uint8Array<ArrayBuffer> | undefined> {
  if (Number(request.headers.get('content-length') ?? 0) > most) return undefined;
  if (request.body === null) return new Uint8Array();
  const reader: ReadableStreamDefaultReader<Uint8Array> = request.body.getReader();
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return new Uint8Array(Buffer.concat(pieces, length));
    length += value.length;
    if (length > most) {
      await reader.cancel();
      return undefined;
    }
    pieces.push(value);
  }
}
