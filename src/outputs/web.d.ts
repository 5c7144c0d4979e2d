/** The few things of the web platform that browsers and Node share and that outputs use (Compression Standard). */

interface Piped {
  readonly readable: {
    getReader(): {
      read(): Promise<{ done: boolean; value?: Uint8Array }>;
      cancel(): Promise<void>;
    };
  };
  readonly writable: {
    getWriter(): {
      write(bytes: Uint8Array): Promise<void>;
      close(): Promise<void>;
      abort(): Promise<void>;
    };
  };
}
declare const CompressionStream: new (format: 'deflate') => Piped;
declare const DecompressionStream: new (format: 'deflate') => Piped;
declare const TextEncoder: new () => { encode(text: string): Uint8Array };
declare const TextDecoder: new (
  label: 'utf-8',
  options: { fatal: boolean },
) => { decode(bytes?: Uint8Array, options?: { stream: boolean }): string };
declare const atob: (text: string) => string;
declare const btoa: (text: string) => string;
