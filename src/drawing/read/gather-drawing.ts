/**
 * Goes through model space in the order of the file, blocks inserted wherever they are inserted, and gathers curves in
 * millimetres, notes, layers, and all that had to be passed over. Each block is decoded once. What an insertion may become is limited, so
 * blocks that double at every level end with a finding, not with the memory.
 */
import {
  type Affine,
  compose,
  determinant,
  isIdentity,
  keepsCircles,
  mapPoint,
  scaling,
} from '#drawing/curves/affine.ts';
import { type CurvePrimitive, mapPrimitive } from '#drawing/curves/curve-primitive.ts';
import { boxOfPrimitives, farthestOf, farthestOfSpans } from '#drawing/curves/farthest.ts';
import type { FitEffort } from '#drawing/curves/fit-arcs.ts';
import { mapHung } from '#drawing/curves/map-hung.ts';
import { spansOfPrimitives } from '#drawing/curves/spans-of-primitives.ts';
import { wideBorders } from '#drawing/curves/wide-borders.ts';
import type { Drawing, DrawnCurve, DrawnNote, WideLines } from '#drawing/drawing.ts';
import {
  FARTHEST,
  MOST_BLOCK_ENTITIES,
  MOST_BLOCK_LEVELS,
  MOST_CURVES,
  MOST_FAILED_FITS,
  MOST_INSERTIONS,
  MOST_SPANS,
  MOST_SPANS_A_CURVE,
} from '#drawing/drawing-limits.ts';
import { decodeEntity } from '#drawing/entities/decode-entity.ts';
import type { Decoded, DecodedCurve, DecodedInsert, WidthRange } from '#drawing/entities/decoded.ts';
import { type EntityFile, type EntityTags, openEntity, report } from '#drawing/entities/entity-tags.ts';
import type { TooMany } from '#findings/drawing-findings.ts';
import type { Finding } from '#findings/finding.ts';
import { finding } from '#findings/finding.ts';
import { FindingTally } from '#findings/finding-tally.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { type Span, spanLength } from '#geometry/span.ts';
import { EQUAL_SCALE, SHORTEST_SPAN } from '#geometry/tolerances.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { unitOfInsunits } from '#units/length-unit.ts';
import type { Condensed } from './condense-drawing.ts';
import { countOn, LayerBook, type LayerPage } from './layer-book.ts';
import { PassedTally } from './passed-tally.ts';
import type { BlockRecord, Container } from './walk-container.ts';

export interface GatherInput {
  readonly file: EntityFile;
  readonly condensed: Condensed;
  readonly container: Container;
  readonly unit: LengthUnit | undefined;
  /** mm: where the frame of what is gathered has its origin. */
  readonly origin: Point;
  /** What is taken of polylines that have a width; their centre lines unless the job says otherwise. */
  readonly wideLines?: WideLines | undefined;
  /** Handles of polylines that are frames of texts. */
  readonly frames: ReadonlySet<string>;
  /** True of findings that need not be reported one by one. */
  readonly isReported?: (found: Finding) => boolean;
  /** Called with the share of model space that is done. */
  readonly progress?: ((share: number) => void) | undefined;
}

export type Gathered = Pick<Drawing, 'layers' | 'curves' | 'notes' | 'passedOver' | 'findings'> & {
  /** Boxes, mm, of curves that were left out because they reach too far. */
  readonly outOfRange: readonly Box[];
};

interface OpenEntity {
  readonly entity: EntityTags;
  readonly decoded: Decoded;
}

/** Where an entity stands: in model space, or inside the blocks named, outermost first. */
interface Standing {
  readonly map: Affine;
  readonly blocks: readonly string[];
  /** Layer of the insertion, which entities on layer 0 of a block take on. */
  readonly insertLayer: string | undefined;
}

export function gatherDrawing(input: GatherInput): Gathered {
  return new Gathering(input).gather();
}

class Gathering {
  readonly #input: GatherInput;
  readonly #layers: LayerBook;
  readonly #passed = new PassedTally();
  readonly #findings: FindingTally;
  readonly #openBlocks = new Map<string, readonly OpenEntity[]>();
  readonly #reported = new Set<string>();
  /** Insertions of blocks that are not there, by the block's name in capitals. */
  readonly #absent = new Map<
    string,
    { name: string; path: string | undefined; line: number; count: number }
  >();
  readonly #curves: DrawnCurve[] = [];
  readonly #notes: DrawnNote[] = [];
  readonly #effort: FitEffort = { failed: 0 };
  readonly #outOfRange: Box[] = [];
  #insertions = 0;
  #blockEntities = 0;
  #spans = 0;
  #full: Finding | undefined;

  constructor(input: GatherInput) {
    this.#input = input;
    this.#findings = new FindingTally(input.isReported);
    this.#layers = new LayerBook(input.container.layers.values(), input.condensed.lineTypes);
  }

  gather(): Gathered {
    const { container, file, progress } = this.#input;
    const { x, y } = this.#input.origin;
    const map = { ...scaling(file.millimetres), x0: -x, y0: -y };
    const standing: Standing = { map, blocks: [], insertLayer: undefined };
    const { entities } = container;
    for (let n = 0; n < entities.length && this.#full === undefined; n++) {
      if (progress !== undefined && n % 5000 === 0) progress(n / entities.length);
      this.#readTopEntity(itemAt(entities, n), standing);
    }
    const findings = [...this.#findings.all(), ...this.#layers.findings(), ...this.#passed.findings()];
    for (const { name, path, line, count } of this.#absent.values()) {
      findings.push(
        path === undefined
          ? finding('block-missing', { block: name, insertions: count }, { line })
          : finding('block-external', { block: name, path, insertions: count }, { line }),
      );
    }
    if (this.#full !== undefined) findings.push(this.#full);
    return {
      layers: this.#layers.layers(),
      curves: this.#full === undefined ? this.#curves : [],
      notes: this.#notes,
      passedOver: this.#passed.rows(),
      findings,
      outOfRange: this.#outOfRange,
    };
  }

  #readTopEntity(number: number, standing: Standing): void {
    const entity = this.#open(number);
    const page = this.#layers.page(entity.layer);
    if (entity.inPaper) this.#passed.addInPaper(entity, page.name);
    else if (!this.#isHidden(entity, page) && !this.#isFrame(entity, page)) {
      const decoded = decodeEntity(entity);
      for (const found of entity.findings) this.#findings.add(found);
      countOn(page, entity.kind);
      this.#place({ entity, decoded }, page, standing);
    }
  }

  #open(number: number): EntityTags {
    const { condensed, file } = this.#input;
    return openEntity(file, {
      first: itemAt(condensed.firsts, number - 1),
      end: itemAt(condensed.ends, number - 1),
    });
  }

  #isFrame(entity: EntityTags, page: LayerPage): boolean {
    if (entity.handle === undefined || !this.#input.frames.has(entity.handle)) return false;
    countOn(page, entity.kind);
    this.#passed.add(entity, page.name, { why: 'it is the frame of a text', mayMatter: false });
    return true;
  }

  /**
   * Counts and passes over what is not to be seen. An insertion on a layer that is off still shows what its block has on other layers;
   * on a frozen layer it shows nothing.
   */
  #isHidden(entity: EntityTags, page: LayerPage): boolean {
    if (entity.invisible) {
      countOn(page, entity.kind);
      this.#passed.add(entity, page.name, { why: 'it is marked invisible', mayMatter: false });
      return true;
    }
    if (page.state === 'shown' || (page.state === 'off' && entity.kind === 'INSERT')) return false;
    countOn(page, entity.kind);
    page.hidden += 1;
    this.#passed.addHidden(entity, page.name, page.state);
    return true;
  }

  #place({ entity, decoded }: OpenEntity, page: LayerPage, standing: Standing): void {
    if (decoded === undefined) return;
    if (decoded.what === 'curve') this.#placeCurve(entity, decoded, page, standing);
    else if (decoded.what === 'insert') this.#insert(entity, decoded, page, standing);
    else if (decoded.what === 'passed') this.#passed.add(entity, page.name, decoded);
    else {
      const { text, at, hung } = decoded;
      const { map } = standing;
      this.#notes.push({ layer: page.name, text, at: mapPoint(map, at), hung: mapHung(map, hung) });
    }
  }

  #placeCurve(
    entity: EntityTags,
    { primitives, widths }: DecodedCurve,
    page: LayerPage,
    { map, blocks }: Standing,
  ): void {
    const mapped = isIdentity(map) ? primitives : primitives.map((primitive) => mapPrimitive(map, primitive));
    const spans = this.#spansOf(entity, mapped, blocks.length > 0);
    if (spans === undefined) return;
    const { kind, handle, line } = entity;
    const own = entity.lineType === undefined ? {} : { lineType: entity.lineType };
    const taken = widths === undefined ? [spans] : this.#widened(entity, spans, { widths, map });
    for (const each of taken) {
      this.#curves.push({
        layer: page.name,
        kind,
        handle,
        line,
        closed: isClosed(each),
        ...own,
        spans: each,
      });
      this.#spans += each.length;
    }
    if (this.#curves.length > MOST_CURVES) this.#stop('curves', this.#curves.length, MOST_CURVES);
    if (this.#spans > MOST_SPANS) this.#stop('lines and arcs', this.#spans, MOST_SPANS);
  }

  /** The borders of a wide polyline where they are asked for and can be made, else the line along its middle; reported once for an entity. */
  #widened(
    entity: EntityTags,
    spans: Span[],
    { widths, map }: { readonly widths: WidthRange; readonly map: Affine },
  ): readonly Span[][] {
    const scale = Math.sqrt(Math.abs(determinant(map)));
    const isEven = widths.most - widths.least <= EQUAL_SCALE * widths.most && keepsCircles(map);
    const isAsked = this.#input.wideLines === 'borders';
    const borders =
      isAsked && isEven
        ? wideBorders(spans, { width: widths.most * scale, closed: isClosed(spans) })
        : undefined;
    const taken = borders !== undefined ? 'borders' : isAsked ? 'centre for want of borders' : 'centre';
    const key = `polyline-wide ${entity.line}`;
    if (!this.#reported.has(key)) {
      this.#reported.add(key);
      const before = entity.findings.length;
      report(entity, 'polyline-wide', { width: widths.most * scale, taken });
      this.#findings.add(itemAt(entity.findings, before));
    }
    return borders ?? [spans];
  }

  #spansOf(entity: EntityTags, primitives: readonly CurvePrimitive[], inBlock: boolean): Span[] | undefined {
    const far = farthestOf(primitives);
    if (!(far <= FARTHEST)) {
      this.#outOfRange.push(boxOfPrimitives(primitives));
      return this.#refuse(entity, inBlock, 'entity-out-of-range', tooFar(primitives, far));
    }
    const spans = spansOfPrimitives(primitives, this.#effort);
    if (this.#effort.failed > MOST_FAILED_FITS) {
      this.#stop('tries of fitting arcs', this.#effort.failed, MOST_FAILED_FITS);
    }
    if (spans === undefined)
      return this.#refuse(entity, inBlock, 'entity-too-fine', { limit: MOST_SPANS_A_CURVE });
    const reach = farthestOfSpans(spans);
    if (!(reach <= FARTHEST)) {
      this.#outOfRange.push(boxOfPrimitives(primitives));
      return this.#refuse(entity, inBlock, 'entity-out-of-range', tooFar(primitives, reach));
    }
    if (spans.length === 0 || (inBlock && spans.every((span) => spanLength(span) < SHORTEST_SPAN))) {
      return this.#refuse(entity, inBlock, 'entity-without-size', { what: 'no length at its scale' });
    }
    return spans;
  }

  /** Reports once for an entity, however often its block is inserted. */
  #refuse(
    entity: EntityTags,
    inBlock: boolean,
    ...[code, facts]:
      | ['entity-out-of-range', TooFar]
      | ['entity-too-fine', { limit: number }]
      | ['entity-without-size', { what: string }]
  ): undefined {
    const key = `${code} ${entity.line}`;
    if (inBlock && this.#reported.has(key)) return undefined;
    this.#reported.add(key);
    const before = entity.findings.length;
    report(entity, code, facts);
    this.#findings.add(itemAt(entity.findings, before));
    return undefined;
  }

  #insert(entity: EntityTags, insert: DecodedInsert, page: LayerPage, standing: Standing): void {
    const key = insert.block.toUpperCase();
    const block = this.#input.container.blocks.get(key);
    if (block === undefined || (block.externalPath !== undefined && block.entities.length === 0)) {
      this.#countAbsent(key, insert, block, entity.line);
      return;
    }
    if (standing.blocks.includes(key)) {
      this.#reportOnce(key, finding('block-inside-itself', { block: block.name }, { line: entity.line }));
      return;
    }
    const levels = standing.blocks.length + 1;
    if (levels > MOST_BLOCK_LEVELS) {
      this.#stop('levels of blocks in blocks', levels, MOST_BLOCK_LEVELS);
      return;
    }
    this.#compareUnits(key, block, entity.line);
    const contents = this.#openBlock(key, block);
    const toOrigin: Affine = { xx: 1, xy: 0, x0: -block.base.x, yx: 0, yy: 1, y0: -block.base.y };
    const own = compose(insert.map, toOrigin);
    const blocks = [...standing.blocks, key];
    for (let row = 0; row < insert.rows; row++) {
      for (let column = 0; column < insert.columns && this.#full === undefined; column++) {
        const x0 = own.x0 + insert.columnStep.x * column + insert.rowStep.x * row;
        const y0 = own.y0 + insert.columnStep.y * column + insert.rowStep.y * row;
        const map = compose(standing.map, { ...own, x0, y0 });
        this.#placeContents(contents, { map, blocks, insertLayer: page.name });
      }
      if (this.#full !== undefined) return;
    }
  }

  #placeContents(contents: readonly OpenEntity[], standing: Standing): void {
    this.#insertions += 1;
    if (this.#insertions > MOST_INSERTIONS) this.#stop('block insertions', this.#insertions, MOST_INSERTIONS);
    this.#blockEntities += contents.length;
    if (this.#blockEntities > MOST_BLOCK_ENTITIES) {
      this.#stop('inserted entities', this.#blockEntities, MOST_BLOCK_ENTITIES);
    }
    for (const open of contents) {
      if (this.#full !== undefined) return;
      const { entity } = open;
      const page = this.#layers.page(entity.layer === '0' ? (standing.insertLayer ?? '0') : entity.layer);
      if (this.#isHidden(entity, page) || this.#isFrame(entity, page)) continue;
      countOn(page, entity.kind);
      this.#place(open, page, standing);
    }
  }

  #openBlock(key: string, block: BlockRecord): readonly OpenEntity[] {
    const known = this.#openBlocks.get(key);
    if (known !== undefined) return known;
    const contents = block.entities.map((number): OpenEntity => {
      const entity = this.#open(number);
      const decoded = decodeEntity(entity);
      for (const found of entity.findings) this.#findings.addFromBlock(found);
      return { entity, decoded };
    });
    this.#openBlocks.set(key, contents);
    return contents;
  }

  #countAbsent(key: string, insert: DecodedInsert, block: BlockRecord | undefined, line: number): void {
    const known = this.#absent.get(key);
    if (known !== undefined) known.count += 1;
    else this.#absent.set(key, { name: insert.block, path: block?.externalPath, line, count: 1 });
  }

  /** Both sides must state a unit; the scale of the insertion is the drawing's own business and is never changed. */
  #compareUnits(key: string, block: BlockRecord, line: number): void {
    const blockUnit = unitOfInsunits(this.#input.condensed.blockUnits.get(key) ?? 0);
    const { unit } = this.#input;
    if (blockUnit === undefined || unit === undefined || blockUnit === unit) return;
    const facts = { block: block.name, blockUnit, drawingUnit: unit };
    this.#reportOnce(`unit ${key}`, finding('block-unit-differs', facts, { line }));
  }

  #reportOnce(key: string, found: Finding): void {
    if (this.#reported.has(key)) return;
    this.#reported.add(key);
    this.#findings.add(found);
  }

  #stop(what: TooMany, found: number, limit: number): void {
    this.#full ??= finding('drawing-too-big', { what, found, limit });
  }
}

interface TooFar {
  readonly value: number;
  readonly limit: number;
  readonly is: 'too large' | 'too far';
}

function tooFar(primitives: readonly CurvePrimitive[], reach: number): TooFar {
  const box = boxOfPrimitives(primitives);
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const isLarge = !(size <= FARTHEST);
  return { value: isLarge ? size : reach, limit: FARTHEST, is: isLarge ? 'too large' : 'too far' };
}

function isClosed(spans: readonly Span[]): boolean {
  const first = itemAt(spans, 0).start;
  const last = itemAt(spans, spans.length - 1).end;
  return spans.length > 1 && first.x === last.x && first.y === last.y;
}
