/**
 * Undo and redo by whole documents: a document is immutable, so that a step costs what it changed. Steps of one group (a drag,
 * a field being typed in) are one step until the group is closed.
 */

export interface Step<Document> {
  /** What was done, as undo and redo name it. */
  readonly label: string;
  readonly group?: string;
  /** The document after the step. */
  readonly document: Document;
}

export interface History<Document> {
  readonly past: readonly Step<Document>[];
  readonly present: Step<Document>;
  /** Undone steps, the next to redo first. */
  readonly future: readonly Step<Document>[];
}

export function startHistory<Document>(label: string, document: Document): History<Document> {
  return { past: [], present: { label, document }, future: [] };
}

/** The history after one more step; what had been undone is gone. */
export function takeStep<Document>(history: History<Document>, step: Step<Document>): History<Document> {
  if (step.document === history.present.document) return history;
  const goesOn = step.group !== undefined && step.group === history.present.group;
  const past = goesOn ? history.past : [...history.past, history.present];
  return { past, present: step, future: [] };
}

/** Ends a group: the next step stands for itself, even under the same name. */
export function closeGroup<Document>(history: History<Document>): History<Document> {
  if (history.present.group === undefined) return history;
  const { label, document } = history.present;
  return { ...history, present: { label, document } };
}

export function undo<Document>(history: History<Document>): History<Document> {
  const previous = history.past.at(-1);
  if (previous === undefined) return history;
  const present = closeGroup({ ...history, present: previous }).present;
  return { past: history.past.slice(0, -1), present, future: [history.present, ...history.future] };
}

export function redo<Document>(history: History<Document>): History<Document> {
  const [next, ...future] = history.future;
  if (next === undefined) return history;
  return closeGroup({ past: [...history.past, history.present], present: next, future });
}

/** The same steps of other documents, such as those that can be kept. What is one document before is one after. */
export function mapHistory<From, To>(
  { past, present, future }: History<From>,
  change: (document: From) => To,
): History<To> {
  const changed = new Map<From, To>();
  const once = (document: From): To => {
    const known = changed.get(document);
    if (known !== undefined) return known;
    const made = change(document);
    changed.set(document, made);
    return made;
  };
  const step = ({ document, ...rest }: Step<From>): Step<To> => ({ ...rest, document: once(document) });
  return { past: past.map(step), present: step(present), future: future.map(step) };
}
