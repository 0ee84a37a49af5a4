/** Findings about the scribe template that the job chooses. */
import { figureTo, lengthWriter, type Shown } from './shown-figures.ts';
import { type Figures, note, warn } from './words.ts';

const mm = lengthWriter(figureTo(2));

export const templateWords = {
  'template-bridge-no-room': warn<{
    /** Of the shortest line that has no room. */
    stage: number;
    length: number;
    isClosed: boolean;
    lines: number;
    width: number;
    apart: number;
    clear: number;
    /** A width that would do for all of them, mm, alone or with less clearance. */
    fits: number | undefined;
    fitsBoth: { width: number; clear: number } | undefined;
  }>({
    title: 'No room for bridges',
    say: ({ stage, length, isClosed, lines, width, apart, clear, fits, fitsBoth }, show) => ({
      reason: [
        `${lines === 1 ? 'A scribe line has' : `${lines} scribe lines have`} no room for bridges ${mm(width, show)} wide, ${mm(clear, show)} clear of corners and meeting lines, with slots at least as long as a bridge and at most ${mm(apart, show)}; the shortest, of stage ${stage}, is ${mm(length, show)} long${isClosed ? ' and closed, so it needs two' : ''}.`,
        `No template is written.`,
      ],
      remedy: bridgeRemedy(fits, fitsBoth, show),
      value: length,
    }),
  }),
  'template-knife-too-wide': warn<{ width: number; web: number }>({
    title: 'Knife wider than the web',
    say: ({ width, web }, show) => ({
      reason: [
        `The knife needs slots ${mm(width, show)} wide, but webs of only ${mm(web, show)} are allowed between them:`,
        `the template would be more gap than sheet. No template is written.`,
      ],
      remedy: `Set ${show.field('handoff.template.web')} to at least ${mm(width, show)}, or use a narrower knife.`,
      value: width,
      limit: web,
    }),
  }),
  'template-margin-too-small': warn<{ margin: number; least: number }>({
    title: 'Margin of the template too small',
    say: ({ margin, least }, show) => ({
      reason: [
        `A slot at the edge of the part needs ${mm(least, show)} of sheet outside; the margin is ${mm(margin, show)}.`,
        `No template is written.`,
      ],
      remedy: `Set ${show.field('handoff.template.margin')} to at least ${mm(least, show)}.`,
      value: margin,
      limit: least,
    }),
  }),
  'template-falls-apart': warn<Figures<'stage' | 'width' | 'web'>>({
    title: 'Slot returns to itself',
    say: ({ stage, width, web }, show) => ({
      reason: [
        `A slot of stage ${stage}, ${mm(width, show)} wide, returns to itself:`,
        `the sheet that it encloses would fall out of the template, or be held by less than ${mm(web, show)}, and there is no room for a bridge to prevent it. No template is written.`,
      ],
      remedy: `Set ${show.field('handoff.template.web')} or ${show.field('handoff.template.knife.width', 'knife.width')} smaller, or ${show.field('handoff.template.bridge.width', 'bridge.width')} and ${show.field('handoff.template.bridge.clear', 'bridge.clear')}, so that a bridge can break the slot.`,
      limit: web,
    }),
  }),
  'template-paper-too-small': warn<{
    paper: string;
    pages: number;
    limit: number;
    /** Paper that would do. */
    larger: string | undefined;
  }>({
    title: 'Paper too small for the template',
    say: ({ paper, pages, limit, larger }, show) => ({
      reason: [
        `On ${paper.toUpperCase()} each template takes ${pages} pages; more than ${limit} cannot be joined accurately.`,
        `template.pdf is not written; the DXF files are.`,
      ],
      remedy:
        larger === undefined
          ? 'Have the template cut or plotted from its DXF.'
          : `Set ${show.field('handoff.template.paper')} to "${larger}", or have the template cut from its DXF.`,
      value: pages,
      limit,
    }),
  }),
  'template-in-several': note<Figures<'templates' | 'least' | 'gap' | 'web'>>({
    title: 'More than one template',
    say: ({ templates, least, gap, web }, show) => ({
      reason: [
        `Slots come within ${mm(gap, show)} of each other, and one sheet needs ${mm(web, show)} between them, so there are ${templates} templates.`,
        `${templates === least ? 'The slots cannot be divided among fewer.' : `At least ${least} are needed.`}`,
      ],
      remedy: `Use them all, in any order, on the same tooling holes; or set ${show.field('handoff.template.web')} smaller.`,
      value: gap,
      limit: web,
    }),
  }),
  'template-line-by-hand': note<Figures<'lines' | 'longest' | 'width'>>({
    title: 'Line too short for a slot',
    say: ({ lines, longest, width }, show) => ({
      reason: `${lines === 1 ? 'An open scribe line' : `${lines} open scribe lines`} of at most ${mm(longest, show)} ${lines === 1 ? 'is' : 'are'} too short for a slot ${mm(width, show)} wide, so no template shows ${lines === 1 ? 'it' : 'them'}.`,
      remedy: 'Cut there by hand from the slots on both sides, and check it against the drawing.',
      value: longest,
    }),
  }),
  /** mm that the best of all wrong ways is off at one hole. */
  'template-fits-two-ways': note<Figures<'holes' | 'misfit' | 'limit'>>({
    title: 'Template fits in more than one way',
    say: ({ holes, misfit, limit }, show) => ({
      reason: [
        `${holes < 3 ? `With ${holes === 0 ? 'no hole' : holes === 1 ? 'one hole' : 'two holes'} it` : `It`} can also be laid turned or face down:`,
        `a wrong position is off by only ${mm(misfit, show)}, less than ${mm(limit, show)}.`,
      ],
      remedy: `Give ${show.field('handoff.template.margin')} room for pins, or give holes that no rotation and no mirror image brings onto each other.`,
      value: misfit,
      limit,
    }),
  }),
  /** `stage` is that of the first slot. */
  'template-mark-no-room': note<{ slots: number; stage: number }>({
    title: 'No room for the mark of a slot',
    say: ({ slots, stage }) => ({
      reason: `Beside ${slots === 1 ? `a slot of stage ${stage}` : `${slots} slots, the first of stage ${stage},`} there is no room for the ticks of the stage or its number, clear of slots, holes, edge and other marks.`,
      remedy:
        'Write the stage there by hand: in the DXF the layer of the slot gives it, in the PDF its colour; or use a narrower knife.',
    }),
  }),
  'tooling-hole-outside': warn<{ name: string; web: number }>({
    title: 'Tooling hole off the template',
    say: ({ name, web }, show) => ({
      reason: [
        `Tooling hole ${name} lies outside the template or less than ${mm(web, show)} from its edge.`,
        `No template is written.`,
      ],
      remedy: `Move it in ${show.field('handoff.template.holes.at')}, or set ${show.field('handoff.template.margin')} larger.`,
      limit: web,
    }),
  }),
  'tooling-hole-on-slot': warn<{ name: string; stage: number; web: number }>({
    title: 'Tooling hole on a slot',
    say: ({ name, stage, web }, show) => ({
      reason: [
        `Tooling hole ${name} lies on a slot of stage ${stage}, or less than ${mm(web, show)} from it.`,
        `No template is written.`,
      ],
      remedy: `Move the hole in ${show.field('handoff.template.holes.at')}.`,
      limit: web,
    }),
  }),
  'tooling-holes-too-close': warn<{ name: string; other: string; web: number }>({
    title: 'Tooling holes too close',
    say: ({ name, other, web }, show) => ({
      reason: [
        `Less than ${mm(web, show)} is left between tooling holes ${other} and ${name}.`,
        `No template is written.`,
      ],
      remedy: `Move one of them in ${show.field('handoff.template.holes.at')}, or leave it out.`,
      limit: web,
    }),
  }),
};

function bridgeRemedy(
  fits: number | undefined,
  fitsBoth: { readonly width: number; readonly clear: number } | undefined,
  show: Shown,
): string {
  if (fits !== undefined) return `Set ${show.field('handoff.template.bridge.width')} to ${mm(fits, show)}.`;
  if (fitsBoth !== undefined) {
    return `Set ${show.field('handoff.template.bridge.width')} to ${mm(fitsBoth.width, show)} and ${show.field('handoff.template.bridge.clear', 'bridge.clear')} to ${mm(fitsBoth.clear, show)}.`;
  }
  return `Set ${show.field('handoff.template.bridge.width')} and ${show.field('handoff.template.bridge.clear', 'bridge.clear')} smaller, ${show.field('handoff.template.bridge.apart', 'bridge.apart')} larger, or use a narrower knife: a bridge needs a curve of a radius at least three times the reach of its slot.`;
}
