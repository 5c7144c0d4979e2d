/**
 * Room for the columns of a schedule: typed arrays cut one after another out of one buffer.
 *
 * Fresh memory costs more than the arithmetic that fills it, most of all in a browser: an edit that is worked out
 * into the room of a schedule which nobody reads any more is several times as fast.
 */
export class Room {
  #buffer = new ArrayBuffer(0);
  #wanted = 0;

  /** Gives all arrays back at once: what they hold will be overwritten. */
  clear(): void {
    const { byteLength } = this.#buffer;
    // Some over, since the next plan may be a little longer; a room much too large is given up.
    if (this.#wanted > byteLength || this.#wanted < byteLength / 4)
      this.#buffer = new ArrayBuffer(Math.ceil(this.#wanted / 8) * 10);
    this.#wanted = 0;
  }

  /** Start of so many bytes within the buffer, or null if they do not fit. */
  #next(bytes: number): number | null {
    const at = this.#wanted;
    this.#wanted = Math.ceil((at + bytes) / 8) * 8;
    return this.#wanted <= this.#buffer.byteLength ? at : null;
  }

  /** Doubles of any value: what they held before. */
  f64(length: number): Float64Array {
    const at = this.#next(length * 8);
    return at === null ? new Float64Array(length) : new Float64Array(this.#buffer, at, length);
  }

  /** Singles of any value. */
  f32(length: number): Float32Array {
    const at = this.#next(length * 4);
    return at === null ? new Float32Array(length) : new Float32Array(this.#buffer, at, length);
  }

  /** Whole numbers of 32 bits and any value. */
  i32(length: number): Int32Array {
    const at = this.#next(length * 4);
    return at === null ? new Int32Array(length) : new Int32Array(this.#buffer, at, length);
  }

  /** Whole numbers of 16 bits without sign and any value. */
  u16(length: number): Uint16Array {
    const at = this.#next(length * 2);
    return at === null ? new Uint16Array(length) : new Uint16Array(this.#buffer, at, length);
  }

  /** Bytes of any value. */
  u8(length: number): Uint8Array {
    const at = this.#next(length);
    return at === null ? new Uint8Array(length) : new Uint8Array(this.#buffer, at, length);
  }
}
