/** The page of licences, from the lock file and what npm installed: every package that comes with Isobath to whoever uses it. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
}

/** Where a package states its licence in its texts alone; checked against them by the test. */
const STATED_IN_TEXT: Readonly<Record<string, { licence: string; file: string; words: string }>> = {
  'png-js': { licence: 'MIT', file: 'LICENSE', words: 'MIT License' },
  'clipper-lib': { licence: 'BSL-1.0', file: 'README.md', words: 'Boost Software License (BSL1.0)' },
  'dejavu-fonts-ttf': {
    licence: 'Bitstream Vera and Arev fonts licences, changes in the public domain',
    file: 'LICENSE',
    words: 'Bitstream Vera Fonts Copyright',
  },
};

export interface LicenceRow {
  readonly name: string;
  readonly version: string;
  readonly licence: string | undefined;
}

export function runtimeLicences(): LicenceRow[] {
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as { packages: Record<string, Locked> };
  return Object.entries(lock.packages)
    .filter(([path, { dev, devOptional }]) => path !== '' && dev !== true && devOptional !== true)
    .map(([path, { version = '' }]) => ({
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version,
      licence: licenceOf(path),
    }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
}

function licenceOf(path: string): string | undefined {
  const { name, license } = JSON.parse(readFileSync(join(path, 'package.json'), 'utf8')) as {
    name: string;
    license?: string;
  };
  const stated = STATED_IN_TEXT[name];
  if (stated === undefined) return license;
  return readFileSync(join(path, stated.file), 'utf8').includes(stated.words) ? stated.licence : undefined;
}

/** Names of packages without a file that holds the licence's text. */
function withoutText(): string[] {
  return runtimeLicences()
    .map(({ name }) => name)
    .filter((name) => {
      const folder = join('node_modules', name);
      return existsSync(folder) && !readdirSync(folder).some((file) => /^(licen[cs]e|copying)/i.test(file));
    });
}

export function licencePage(): string {
  const rows = runtimeLicences().map(
    ({ name, version, licence }) => `| ${name} | ${version} | ${licence ?? 'not stated'} |`,
  );
  return `# Licences

Packages that come with Isobath, in the built page, the command line or its types, each with its version and the licence that it
states. The list is made from the lock file and the installed packages by a test (\`tests/lint/licences.test.ts\`), which fails when
it is behind. png-js states its licence in its text alone, not in its package file.

| package | version | licence |
| --- | --- | --- |
${rows.join('\n')}

Packages that bring no text of their licence along: ${withoutText().join(', ')}.
`;
}
