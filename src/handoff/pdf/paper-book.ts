/**
 * The papers of the shop: pages with one head and foot, filled with blocks. Every page after the first carries part, issue, which page of
 * how many it is and a box for serial or lot, for pages come apart; every page carries the plan's hash and that it is no approval.
 */

import { shortHash } from '#handoff/short-hash.ts';
import { flowText } from './flow-text.ts';
import { type FormBox, formBoxes } from './form-table.ts';
import { fitsIn } from './letters-that-fit.ts';
import { FRAME_INK, RULE_INK, TYPE } from './paper-type.ts';
import { PAPER, type Paper, type Pen } from './pen.ts';
import { type Block, paged } from './sheet-book.ts';
import { INK } from './sheet-ink.ts';
import { shortened } from './shortened.ts';

/** Whose papers they are. */
export interface PaperOwner {
  /** Number of the part, or its name where it has none. */
  readonly part: string;
  readonly isNumber: boolean;
  readonly hand: string;
  /** Where both faces are etched and the papers are of one of them. */
  readonly face?: string | undefined;
  readonly issue: string | undefined;
  readonly serial: string | undefined;
}

export interface PaperHead extends PaperOwner {
  readonly title: string;
  /** SHA-256, hexadecimal. */
  readonly planHash: string;
  /** The first page says part, hand and issue like the others, in place of the plan's hash: it has no room for a heading that does. */
  readonly isNamedAtOnce?: boolean;
  /** In place of page and pages of the file: what a page of a larger set calls itself. */
  readonly page?: string;
}

/** Pages of one kind, beginning on a new one. */
export interface PaperPart {
  readonly subtitle: string;
  readonly blocks: readonly Block[];
}

/** mm that two lines of a remark take. */
const MOST_BESIDE = 2.6 * TYPE.note + 0.1;
/** mm */
const MARGIN = 11;
const SIDE = 15;
const HEAD = 15;
/** High enough for two lines of the smallest letters below the label. */
const BOXES = 9.2;
const FOOT = 9;
const NO_APPROVAL = 'Computed geometry and time, not an approval. The site’s process specification decides.';

/** mm that blocks have: one width on A4 and Letter. */
export function paperRoom(paper: Paper): { readonly width: number; readonly height: number } {
  const { width, height } = PAPER[paper];
  return { width: paper === 'letter' ? 180 : width - 2 * SIDE, height: height - 2 * MARGIN - HEAD - FOOT };
}

/** Pages that blocks of one part take. */
export function pageCount(paper: Paper, blocks: readonly Block[]): number {
  return paged(blocks, paperRoom(paper).height).length;
}

export function drawPapers(
  pen: Pen,
  {
    paper,
    head,
    parts,
  }: { readonly paper: Paper; readonly head: PaperHead; readonly parts: readonly PaperPart[] },
): void {
  const { width, height } = paperRoom(paper);
  const pages = parts.flatMap(({ subtitle, blocks }) =>
    paged(blocks, height).map((page) => ({ subtitle, page })),
  );
  const size = PAPER[paper];
  const left = (size.width - width) / 2;
  pages.forEach(({ subtitle, page }, index) => {
    pen.page(size);
    const frame = { left, right: left + width, top: size.height - MARGIN, bottom: MARGIN };
    drawHead(pen, { ...frame, head, subtitle, index, count: pages.length });
    drawFoot(pen, { ...frame, head, isFirst: index === 0 });
    let top = size.height - MARGIN - HEAD;
    for (const block of page) {
      block.draw(pen, { left, right: left + width, top });
      top -= block.height;
    }
  });
}

interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly head: PaperHead;
}

function drawHead(
  pen: Pen,
  frame: Frame & { readonly subtitle: string; readonly index: number; readonly count: number },
): void {
  const { left, right, top, head, subtitle, index, count } = frame;
  const page = { label: 'Page', value: head.page ?? `${index + 1} of ${count}`, share: 19 };
  const side: readonly FormBox[] = [
    { label: 'Hand', value: head.hand, share: 21 },
    ...(head.face === undefined ? [] : [{ label: 'Face', value: head.face, share: 13 }]),
  ];
  const named: readonly FormBox[] = [
    { label: head.isNumber ? 'Part no.' : 'Part', value: head.part, share: 30 },
    ...side,
    { label: 'Issue', value: head.issue, share: 13 },
  ];
  const serial = { label: 'Serial or lot', value: head.serial, share: 24 };
  const plan = { label: 'Plan', value: shortHash(head.planHash), share: 32 };
  const boxes: readonly FormBox[] =
    index > 0
      ? [...named, serial, page]
      : head.isNamedAtOnce === true
        ? [...named, page]
        : [...side, plan, page];
  const width = boxes.reduce((sum, { share }) => sum + share, 0);
  pen.text(head.title, { x: left, y: top - TYPE.title + 1 }, { size: TYPE.title, isBold: true });
  const room = { width: right - left - width - 4 };
  const size = [TYPE.text, TYPE.note, TYPE.head].find((each) =>
    fitsIn(pen, subtitle, { ...room, size: each }),
  );
  const said = size === undefined ? shortened(pen, subtitle, { ...room, size: TYPE.text }) : subtitle;
  pen.text(said, { x: left, y: top - TYPE.title - 3 }, { size: size ?? TYPE.text });
  formBoxes(pen, boxes, { width, height: BOXES }).draw(pen, { left: right - width, right, top });
  const y = top - 11;
  pen.line({ x: left, y }, { x: right, y }, { width: RULE_INK * 1.5, color: INK });
}

function drawFoot(
  pen: Pen,
  { left, right, bottom, head, isFirst }: Frame & { readonly isFirst: boolean },
): void {
  pen.line({ x: left, y: bottom + 5 }, { x: right, y: bottom + 5 }, { width: RULE_INK, color: INK });
  const size = TYPE.head;
  pen.text(NO_APPROVAL, { x: left, y: bottom + 1.6 }, { size });
  const hash = `Plan ${shortHash(head.planHash)}`;
  pen.text(hash, { x: right, y: bottom + 1.6 }, { size, align: 'right' });
  if (isFirst) pen.text(`Plan ${head.planHash}`, { x: left, y: bottom - 1.6 }, { size: TYPE.label });
}

/** A section's head, with a remark beside it, or below it where it would take more than two lines there. */
export function sectionHead(pen: Pen, title: string, remark: string, width: number): Block {
  const style = { size: TYPE.section, isBold: true };
  const taken = pen.textWidth(title, style) + 2;
  const beside = flowText(pen, remark, { width: width - taken, size: TYPE.note });
  if (beside.height > MOST_BESIDE) {
    const below = flowText(pen, remark, { width, size: TYPE.note });
    return {
      height: 7.5 + below.height + 1,
      keepsWith: 20,
      draw: (to, { left, top }) => {
        to.text(title, { x: left, y: top - 6 }, style);
        below.draw(to, { x: left, y: top - 7.5 });
      },
    };
  }
  const height = Math.max(7.5, beside.height + 3.5);
  return {
    height,
    keepsWith: 20,
    draw: (to, { left, top }) => {
      to.text(title, { x: left, y: top - 6 }, style);
      if (remark !== '')
        beside.draw(to, { x: left + taken, y: top - 6 + 0.34 * TYPE.note + TYPE.note * 0.65 });
    },
  };
}

/** A remark of its own below a table. */
export function remark(pen: Pen, text: string, width: number): Block {
  const flow = flowText(pen, text, { width, size: TYPE.text });
  return { height: flow.height + 2, draw: (to, { left, top }) => flow.draw(to, { x: left, y: top - 1 }) };
}

/** A frame with sentences in it, and a sign at its left where one is given. */
export function framedText(
  pen: Pen,
  lines: readonly string[],
  {
    width,
    sign,
  }: { readonly width: number; readonly sign?: (pen: Pen, at: { x: number; y: number }) => void },
): Block {
  const inset = sign === undefined ? 2 : 14;
  const flows = lines.map((line) => flowText(pen, line, { width: width - inset - 2, size: TYPE.text }));
  const height = flows.reduce((sum, flow) => sum + flow.height + 0.6, 0) + 2.4;
  return {
    height,
    draw: (to, { left, top }) => {
      const box = { minX: left, maxX: left + width, minY: top - height, maxY: top };
      to.rectangle(box, { stroke: { width: FRAME_INK / 2, color: INK } });
      sign?.(to, { x: left + 7, y: top - 6.5 });
      let y = top - 1.5;
      for (const flow of flows) {
        flow.draw(to, { x: left + inset, y });
        y -= flow.height + 0.6;
      }
    },
  };
}
