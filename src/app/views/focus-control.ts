/** Brings a control into sight by its label, opening what it is folded in, once the page has been drawn; nothing where there is none. */
export function focusControl(label: string): void {
  requestAnimationFrame(() => requestAnimationFrame(() => controlNamed(label)?.focus()));
}

function controlNamed(label: string): HTMLElement | undefined {
  const controls = document.querySelectorAll<HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>(
    '.side :is(input, select, textarea), .handoff input',
  );
  const found = [...controls].find((control) =>
    [control.getAttribute('aria-label'), ...[...(control.labels ?? [])].map((each) => each.textContent)].some(
      (name) => name?.trim().startsWith(label),
    ),
  );
  for (let inside = found?.closest('details'); inside; inside = inside.parentElement?.closest('details'))
    inside.open = true;
  found?.scrollIntoView({ block: 'center' });
  return found;
}
