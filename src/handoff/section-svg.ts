/** A section as an SVG picture: the same strokes as on the review sheets, on a page of its own, with its key and the plan's name. */
import { itemAt } from '#geometry/assert.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { CAUTIONS } from './cautions.ts';
import type { NamedSection } from './named-section.ts';
import { saidScale, sectionKey, sectionPicture } from './pdf/section-picture.ts';
import { shortened } from './pdf/shortened.ts';
import { svgPen } from './svg-pen.ts';

export interface SectionSvgInput {
  /** Of the job. */
  readonly name: string;
  /** SHA-256 of plan.json, hexadecimal. */
  readonly planHash: string;
  readonly section: NamedSection;
  /** mm; of a tapered sheet the thickest. */
  readonly thickness: number;
  readonly stages: readonly Stage[];
}

/** mm: as wide as A3 lies, less its margins. */
const WIDTH = 400;
const HEIGHT = 110;
const MARGIN = 8;
const ROW = 5;

export function sectionSvg({ name, planHash, section, thickness, stages }: SectionSvgInput): string {
  const room = { width: WIDTH - 2 * MARGIN, height: HEIGHT };
  const metal = { thickness, stages };
  const picture = sectionPicture(section, metal, room);
  const key = sectionKey(metal, room.width);
  const head = 3 * ROW;
  const height = MARGIN + head + picture.height + key.height + ROW + MARGIN;
  const title = `Section ${section.name}: ${name}`;
  const pen = svgPen({ width: WIDTH, height }, title);
  const area = { left: MARGIN, right: WIDTH - MARGIN, top: height - MARGIN };
  const said = `${saidScale(section, metal, room)}; all in mm`;
  const large = { size: 4, isBold: true };
  const small = { size: 2.8 };
  pen.text(shortened(pen, title, { ...large, width: room.width }), { x: area.left, y: area.top - 4 }, large);
  pen.text(said, { x: area.left, y: area.top - 4 - ROW }, small);
  pen.text(`plan ${planHash}`, { x: area.right, y: area.top - 4 - ROW }, { ...small, align: 'right' });
  picture.draw(pen, { ...area, top: area.top - head });
  key.draw(pen, { ...area, top: area.top - head - picture.height });
  pen.text(itemAt(CAUTIONS, 0), { x: area.left, y: MARGIN }, { size: 2.6 });
  return pen.finish();
}
