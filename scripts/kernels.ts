// Compiles the kernels written in AssemblyScript (src/core/separate/kernels/assembly) into TypeScript that carries their bytes.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const root = fileURLToPath(new URL('..', import.meta.url)),
  folder = 'src/core/separate/kernels';

const kernels = ['search', 'blur', 'register'] as const;

/** The text of NAME-wasm.ts as the source makes it now. */
export async function compiledKernel(name: (typeof kernels)[number]): Promise<string> {
  let bytes: Uint8Array = new Uint8Array();
  const { error, stderr } = await asc.main(
    [
      `${folder}/assembly/${name}.ts`,
      '-O3',
      '--noAssert',
      '--converge',
      '--runtime',
      'stub',
      '--enable',
      'simd',
      '--initialMemory',
      name === 'search' ? '40' : '1',
      '--outFile',
      `${name}.wasm`,
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
  return `// Made by \`npm run kernels\` from assembly/${name}.ts.\nexport const ${name}Wasm = '${Buffer.from(bytes).toString('base64')}';\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const name of kernels) writeFileSync(`${root}${folder}/${name}-wasm.ts`, await compiledKernel(name));
