/**
 * All that core takes from the engine beyond the language itself: compiled modules, handed in by the caller. Only core's own project
 * (tsconfig.core.json) reads this file; page and command line have the whole of it.
 */
declare namespace WebAssembly {
  class Module {
    private readonly compiled: true;
    constructor(bytes: Uint8Array);
  }
  class Instance {
    constructor(module: Module, imports?: Imports);
    readonly exports: Exports;
  }
  class Memory {
    readonly buffer: ArrayBuffer;
    grow(pages: number): number;
  }
  type Imports = Record<string, Record<string, unknown>>;
  type Exports = Record<string, unknown>;
}
type BufferSource = ArrayBufferView | ArrayBuffer;
/** What picture decoders give back. */
interface ImageData {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}
