/** A DXF file as it reads back: its lines, by layer, stage layers in the stage's colour. */

import { useEffect, useState } from 'react';
import { sceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { DrawnLine } from '#app/worker/planned-page.ts';
import { type Box, boxOfSpans, growBox } from '#geometry/box.ts';
import { pathOfContour } from '#handoff/contour.ts';
import { stageOfLayer } from '#handoff/stage-layer.ts';
import type { OutputFile } from '#run/output-file.ts';
import { contourPath } from './contour-path.ts';

export function DrawingPreview({ file }: { readonly file: OutputFile }) {
  const { follower } = useWorkbench();
  const stages = useWorkbenchState(({ derived }) => derived.page?.plan?.stages);
  const [lines, setLines] = useState<readonly DrawnLine[]>();
  useEffect(() => {
    let isGone = false;
    void follower.readBack(file.bytes).then((read) => {
      if (!isGone) setLines(read);
    });
    return () => {
      isGone = true;
    };
  }, [file.bytes, follower]);
  if (lines === undefined) return <p className="aside">Reading it back.</p>;
  const box = boxOf(lines);
  const colorOf = (layer: string) => stages?.find(({ number }) => stageOfLayer(layer) === number)?.color;
  const layers = [...new Set(lines.map(({ layer }) => layer))];
  return (
    <figure className="drawing-preview">
      <svg
        role="img"
        aria-label={`${file.name} as it reads back: ${layers.join(', ')}`}
        viewBox={`${box.minX} ${-box.maxY} ${box.maxX - box.minX} ${box.maxY - box.minY}`}
      >
        {lines.map(({ layer, contour }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines of a file have no other name, and never change
          <Line key={index} d={contourPath(contour)} color={colorOf(layer)} />
        ))}
      </svg>
      <figcaption className="aside">{countWords(lines, layers)}</figcaption>
    </figure>
  );
}

/** In a stage's colour, with its casing where that does not stand out from the page. */
function Line({ d, color }: { readonly d: string; readonly color: string | undefined }) {
  const isDark = usePrefersDark();
  if (color === undefined) return <path d={d} stroke="currentColor" />;
  const { line, casing } = lookOf(color, sceneTheme(isDark));
  return (
    <>
      <path className="casing" d={d} stroke={casing} />
      <path d={d} stroke={line} />
    </>
  );
}

function countWords(lines: readonly DrawnLine[], layers: readonly string[]): string {
  return layers.map((name) => `${name}: ${lines.filter(({ layer }) => layer === name).length}`).join(', ');
}

function boxOf(lines: readonly DrawnLine[]): Box {
  const box = boxOfSpans(lines.flatMap(({ contour }) => pathOfContour(contour).spans));
  return growBox(box, 0.03 * Math.max(box.maxX - box.minX, box.maxY - box.minY));
}
