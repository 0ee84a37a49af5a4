/** A look at a file before it is saved, by its kind: words, page, drawing, picture or solid. Always the very bytes. */
import { lazy, type ReactNode, Suspense } from 'react';
import { hasWebGl } from '#app/scene/has-web-gl.ts';
import type { OutputFile } from '#run/output-file.ts';
import { DrawingPreview } from './DrawingPreview.tsx';
import { useObjectUrl } from './use-object-url.ts';

const SolidPreview = lazy(async () => ({
  default: (await import('#app/scene/relief/SolidPreview.tsx')).SolidPreview,
}));

const LOOK_BYTES = 4000;

export function FilePreview({ file }: { readonly file: OutputFile }): ReactNode {
  if (file.mime === 'image/vnd.dxf') return <DrawingPreview file={file} />;
  if (file.mime === 'application/pdf') return <PagePreview file={file} />;
  if (file.mime === 'image/svg+xml') return <PicturePreview file={file} />;
  if (file.mime.startsWith('model/')) {
    return hasWebGl() ? (
      <Suspense fallback={<p className="aside">Opening the solid.</p>}>
        <SolidPreview file={file} />
      </Suspense>
    ) : (
      <p className="aside">This browser has no WebGL 2: a solid can’t be shown, only saved.</p>
    );
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: scrolls, so that keys must reach it
    <section tabIndex={0} className="look-inside" aria-label={`First lines of ${file.name}`}>
      <pre>{firstLines(file.bytes)}</pre>
    </section>
  );
}

/** Browsers that show PDF do so in place; in any other the link opens or saves it. */
function PagePreview({ file }: { readonly file: OutputFile }) {
  const url = useObjectUrl(file);
  return (
    <>
      {navigator.pdfViewerEnabled && (
        <iframe className="page-preview" src={url} title={`Pages of ${file.name}`} />
      )}
      <a href={url} target="_blank" rel="noreferrer">
        open {file.name} in a tab of its own
      </a>
    </>
  );
}

function PicturePreview({ file }: { readonly file: OutputFile }) {
  return <img className="picture-preview" src={useObjectUrl(file)} alt={`${file.name}: ${file.what}`} />;
}

function firstLines(bytes: Uint8Array): string {
  const text = new TextDecoder().decode(bytes.subarray(0, LOOK_BYTES));
  return bytes.length > LOOK_BYTES ? `${text}\n…` : text;
}
