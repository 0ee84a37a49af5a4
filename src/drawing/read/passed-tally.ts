/** Counts what is passed over by kind, layer and reason, so that nothing disappears in silence. */

import type { PassedOver } from '#drawing/drawing.ts';
import type { PassedEntity } from '#drawing/entities/decoded.ts';
import type { EntityTags } from '#drawing/entities/entity-tags.ts';
import { type Finding, finding } from '#findings/finding.ts';

const IN_PAPER_SPACE = 'it lies in paper space';

interface Row {
  readonly kind: string;
  readonly layer: string;
  readonly why: string;
  readonly mayMatter: boolean;
  readonly firstHandle: string | undefined;
  readonly firstLine: number;
  /** Reported by a finding of its own: hidden layers, paper space. */
  readonly reportedElsewhere: boolean;
  count: number;
}

export class PassedTally {
  readonly #rows = new Map<string, Row>();
  #inPaper = 0;

  add(entity: EntityTags, layer: string, passed: Omit<PassedEntity, 'what'>): void {
    this.#count(entity, layer, passed, false);
  }

  addHidden(entity: EntityTags, layer: string, state: 'off' | 'frozen'): void {
    this.#count(entity, layer, { why: `its layer is ${state}`, mayMatter: false }, true);
  }

  addInPaper(entity: EntityTags, layer: string): void {
    this.#inPaper += 1;
    this.#count(entity, layer, { why: IN_PAPER_SPACE, mayMatter: false }, true);
  }

  rows(): PassedOver[] {
    return this.#sorted().map(({ kind, layer, why, count }) => ({ kind, layer, why, count }));
  }

  findings(): Finding[] {
    const reported = this.#sorted()
      .filter((row) => !row.reportedElsewhere)
      .map(({ kind, layer, why, count, mayMatter, firstHandle, firstLine }) => {
        const place = { line: firstLine, layer };
        return mayMatter
          ? finding('entity-cannot-be-read', { kind, count, why, firstHandle }, place)
          : finding('entity-passed-over', { kind, count, why }, place);
      });
    if (this.#inPaper > 0) reported.push(finding('paper-space-passed-over', { entities: this.#inPaper }));
    return reported;
  }

  #count(
    entity: EntityTags,
    layer: string,
    passed: Omit<PassedEntity, 'what'>,
    reportedElsewhere: boolean,
  ): void {
    const key = `${entity.kind}\n${layer}\n${passed.why}`;
    const row = this.#rows.get(key);
    if (row !== undefined) {
      row.count += 1;
      return;
    }
    const { kind, handle, line } = entity;
    const { why, mayMatter } = passed;
    this.#rows.set(key, {
      kind,
      layer,
      why,
      mayMatter,
      firstHandle: handle,
      firstLine: line,
      reportedElsewhere,
      count: 1,
    });
  }

  #sorted(): Row[] {
    return [...this.#rows].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, row]) => row);
  }
}
