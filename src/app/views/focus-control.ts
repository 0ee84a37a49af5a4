/**
 * Brings a control into sight by its label, once the page has been drawn; nothing where there is none. What is folded is made only while it
 * is open (`Disclosure`), so each folded part is opened in turn, and closed again where the control is not in it.
 */
export async function focusControl(label: string): Promise<void> {
  await drawn();
  for (const folded of [undefined, ...document.querySelectorAll<HTMLDetailsElement>(FOLDED)]) {
    if (folded !== undefined) folded.open = true;
    await drawn();
    const found = controlNamed(label);
    if (found === undefined) {
      if (folded !== undefined) folded.open = false;
      continue;
    }
    const around = found.closest('details');
    if (around !== null) around.open = true;
    found.scrollIntoView({ block: 'center' });
    return found.focus();
  }
}

const FOLDED = '.side details:not([open])';
const CONTROLS = ':is(.side, .review) :is(input, select, textarea), .handoff input';

function controlNamed(label: string): HTMLElement | undefined {
  const controls = document.querySelectorAll<HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>(
    CONTROLS,
  );
  return [...controls].find((control) => {
    const names = [...(control.labels ?? [])].map((each) => each.textContent);
    return [control.getAttribute('aria-label'), ...names].some((name) => name?.trim().startsWith(label));
  });
}

function drawn(): Promise<void> {
  return new Promise((resolve) => {
    requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
  });
}
