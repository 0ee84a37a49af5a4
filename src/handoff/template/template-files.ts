/** The files of a template set: a drawing to cut each template from, and all of them on paper at true size. */
import { type Finding, finding } from '#findings/finding.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { SheetFonts } from '#handoff/pdf/load-fonts.ts';
import { TEMPLATE_PAPERS, type TemplatePaper } from '#job/fields/template-fields.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { twoDigits } from '#units/two-digits.ts';
import { templateDrawing } from './template-drawing.ts';
import { templatePages } from './template-pages.ts';
import type { TemplateSet } from './template-set.ts';
import { tileGrid } from './tile-pages.ts';

interface TemplateFile {
  readonly name: string;
  readonly what: string;
  readonly bytes: Uint8Array;
}

/** More pages to a template than anybody joins: our own choice. */
const MOST_PAGES = 100;

/** Paper too small costs the file on paper; the drawings are made all the same. */
export function checkPaper({ sheet, input }: TemplateSet): Finding[] {
  const { paper } = input.choices;
  const box = boxOfSpans(sheet.outline);
  const pages = (on: TemplatePaper): number => {
    const { columns, rows } = tileGrid(box, on);
    return columns * rows;
  };
  if (pages(paper) <= MOST_PAGES) return [];
  const larger = TEMPLATE_PAPERS.slice(TEMPLATE_PAPERS.indexOf(paper)).find(
    (each) => pages(each) <= MOST_PAGES,
  );
  return [finding('template-paper-too-small', { paper, pages: pages(paper), limit: MOST_PAGES, larger })];
}

export interface TemplateRelease {
  readonly planHash: string;
  /** Of the drawings. */
  readonly unit: LengthUnit;
  /** mm: where the plan's frame has its origin in the drawing's own; undefined where the two are one. */
  readonly origin?: Point | undefined;
  readonly date: string | undefined;
  /** Of the pages: those of all sheets of the hand-off. */
  readonly fonts?: SheetFonts | undefined;
}

export async function templateFiles(
  set: TemplateSet,
  { planHash, unit, origin, date, fonts }: TemplateRelease,
): Promise<TemplateFile[]> {
  const drawings = set.templates.map((_, index) => ({
    name: `template-${twoDigits(index + 1)}.dxf`,
    what: `scribe template ${index + 1} of ${set.templates.length}, to cut`,
    bytes: templateDrawing({ set, number: index + 1, planHash, unit, origin }),
  }));
  if (checkPaper(set).length > 0) return drawings;
  const bytes = await templatePages({ set, planHash, date, fonts });
  const pages = { name: 'template.pdf', what: 'scribe templates at 1 : 1', bytes };
  return [...drawings, pages];
}
