/** Text as a compressed word of letters, digits, - and _: zlib (RFC 1950, whose checksum tells a damaged one), base64url (RFC 4648, section 5). */

/** Text that cannot be read back; the message says what was found. */
export class PackingError extends Error {}

/** Bytes given to the inflater at a time: at most a thousandfold of it (RFC 1951) is there before it is looked at. */
const PIECE_BYTES = 1024;

type Reader = ReturnType<InstanceType<typeof CompressionStream>['readable']['getReader']>;

function base64url(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function bytesOf(word: string): Uint8Array {
  const foreign = /[^\w-]/u.exec(word);
  if (foreign) throw new PackingError(`${JSON.stringify(foreign[0])} at character ${foreign.index + 1}`);
  try {
    const binary = atob(word.replaceAll('-', '+').replaceAll('_', '/'));
    return Uint8Array.from(binary, (character) => character.charCodeAt(0));
  } catch {
    throw new PackingError('a piece that is cut off');
  }
}

async function* chunksOf(reader: Reader): AsyncGenerator<Uint8Array> {
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    if (read.value) yield read.value;
  }
}

/** Text, compressed. */
export async function packed(text: string): Promise<string> {
  const stream = new CompressionStream('deflate');
  const writer = stream.writable.getWriter();
  const written = writer.write(new TextEncoder().encode(text)).then(() => writer.close());
  const chunks: number[] = [];
  for await (const chunk of chunksOf(stream.readable.getReader()))
    for (const byte of chunk) chunks.push(byte);
  await written;
  return base64url(Uint8Array.from(chunks));
}

/** Writes piece by piece; the reader hears of what goes wrong. */
async function feed(
  writer: ReturnType<InstanceType<typeof CompressionStream>['writable']['getWriter']>,
  bytes: Uint8Array,
): Promise<void> {
  try {
    for (let from = 0; from < bytes.length; from += PIECE_BYTES)
      await writer.write(bytes.subarray(from, from + PIECE_BYTES));
    await writer.close();
  } catch {
    // Said by the reader, or given up by it.
  }
}

/**
 * Text of a compressed word. Inflating stops as soon as there is too much of it.
 * @param most - most characters that the text may have
 * @throws PackingError if it is none, is damaged, or is longer
 */
export async function unpacked(word: string, most: number): Promise<string> {
  const stream = new DecompressionStream('deflate');
  const writer = stream.writable.getWriter();
  const reader = stream.readable.getReader();
  const decoder = new TextDecoder('utf-8', { fatal: true });
  void feed(writer, bytesOf(word));
  let text = '';
  try {
    for await (const chunk of chunksOf(reader)) {
      text += decoder.decode(chunk, { stream: true });
      if (text.length > most) break;
    }
    if (text.length <= most) return text + decoder.decode();
  } catch {
    throw new PackingError('a piece that is damaged or cut off');
  }
  // Either may have ended by itself meanwhile.
  await Promise.allSettled([reader.cancel(), writer.abort()]);
  throw new PackingError(`more than ${most} characters of plan`);
}
