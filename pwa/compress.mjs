// Compresses the built app once, so that the server never has to: beside every
// text file and module a .br and a .gz stand in its place.
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const [folder, quality] = process.argv.slice(2);
for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
  const path = join(entry.parentPath, entry.name);
  if (!entry.isFile() || !/\.(js|css|html|svg|json|wasm|webmanifest|txt)$/.test(entry.name)) continue;
  const plain = readFileSync(path);
  writeFileSync(
    `${path}.br`,
    brotliCompressSync(plain, {
      params: {
        [constants.BROTLI_PARAM_QUALITY]: Number(quality),
        [constants.BROTLI_PARAM_SIZE_HINT]: plain.length,
      },
    }),
  );
  writeFileSync(`${path}.gz`, gzipSync(plain, { level: 9 }));
  rmSync(path);
}
