/**
 * Unpacks the Chromium of @sparticuz/chromium (Linux, x64, glibc). Not by the package's own code: that writes to one fixed
 * name in the temporary folder, so that two runs race, and leaves out the libraries that a bare machine lacks. Here all goes
 * to a folder of its own first, which takes its final name in one step: it is there whole or not at all.
 */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { brotliDecompressSync } from 'node:zlib';

export interface FoundBrowser {
  readonly executablePath: string;
  readonly env: Readonly<Record<string, string>>;
}

const TAR_BLOCK = 512;

export function unpackBrowser(): FoundBrowser {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  const packed = join(dirname(entry), '..', '..', 'bin');
  const { version } = JSON.parse(readFileSync(join(packed, '..', 'package.json'), 'utf8')) as {
    version: string;
  };
  const cache = join(packed, '..', '..', '..', '.cache', 'isobath');
  const home = join(cache, `chromium-${version}`);
  if (!existsSync(home)) unpackInto(home, packed);
  return {
    executablePath: join(home, 'chromium'),
    env: { LD_LIBRARY_PATH: join(home, 'lib'), FONTCONFIG_PATH: home, HOME: process.env['HOME'] ?? home },
  };
}

function unpackInto(home: string, packed: string): void {
  mkdirSync(dirname(home), { recursive: true });
  const temporary = mkdtempSync(`${home}-`);
  const program = brotliDecompressSync(readFileSync(join(packed, 'chromium.br')));
  writeFileSync(join(temporary, 'chromium'), program, { mode: 0o755 });
  for (const archive of ['al2023', 'fonts', 'swiftshader']) {
    unpackTar(brotliDecompressSync(readFileSync(join(packed, `${archive}.tar.br`))), temporary);
  }
  writeFileSync(join(temporary, 'fonts.conf'), fontsConf(home));
  try {
    renameSync(temporary, home);
  } catch (error) {
    // Another run was first: its folder is as good as ours.
    rmSync(temporary, { recursive: true, force: true });
    if (!existsSync(home)) throw error;
  }
}

/** Files and folders of a ustar archive: all that these archives hold. */
function unpackTar(archive: Buffer, into: string): void {
  for (let at = 0; at + TAR_BLOCK <= archive.length; ) {
    const name = text(archive, at, 100);
    if (name === '') return;
    const size = Number.parseInt(text(archive, at + 124, 12), 8);
    const isFolder = name.endsWith('/');
    const path = join(into, name);
    mkdirSync(isFolder ? path : dirname(path), { recursive: true });
    const start = at + TAR_BLOCK;
    if (!isFolder) writeFileSync(path, archive.subarray(start, start + size), { mode: 0o755 });
    at = start + Math.ceil(size / TAR_BLOCK) * TAR_BLOCK;
  }
}

function text(archive: Buffer, start: number, length: number): string {
  return archive
    .toString('latin1', start, start + length)
    .replace(/\0.*$/s, '')
    .trim();
}

/** The packed fonts.conf points to folders of another machine. */
function fontsConf(home: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(home, 'fonts')}</dir>
  <cachedir>${join(home, 'font-cache')}</cachedir>
</fontconfig>
`;
}
