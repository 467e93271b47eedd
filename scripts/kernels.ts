// Compiles the kernels written in AssemblyScript (src/core/separate/kernels/assembly) into TypeScript that carries their bytes.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const root = fileURLToPath(new URL('..', import.meta.url)),
  folder = 'src/core/separate/kernels';

/** The text of search-wasm.ts as the source makes it now. */
export async function compiledKernels(): Promise<string> {
  let bytes: Uint8Array = new Uint8Array();
  const { error, stderr } = await asc.main(
    [
      `${folder}/assembly/search.ts`,
      '-O3',
      '--noAssert',
      '--converge',
      '--runtime',
      'stub',
      '--enable',
      'simd',
      '--initialMemory',
      '40',
      '--outFile',
      'search.wasm',
      '--baseDir',
      root,
    ],
    {
      writeFile: (_name, contents) => {
        bytes = contents as Uint8Array;
      },
    },
  );
  if (error) throw new Error(`${error.message}\n${stderr.toString()}`);
  return `// Made by \`npm run kernels\` from assembly/search.ts.\nexport const searchWasm = '${Buffer.from(bytes).toString('base64')}';\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(`${root}${folder}/search-wasm.ts`, await compiledKernels());
