/** A part of the planning column that opens in place; what is inside is made only while it is open. */
import { type ReactNode, useState } from 'react';

interface DisclosureProps {
  readonly title: string;
  readonly startsOpen?: boolean;
  readonly children: ReactNode;
}

export function Disclosure({ title, startsOpen = false, children }: DisclosureProps) {
  const [isOpen, setOpen] = useState(startsOpen);
  return (
    <details
      className="disclosure"
      open={isOpen}
      onToggle={({ currentTarget }) => setOpen(currentTarget.open)}
    >
      <summary>{title}</summary>
      {isOpen && children}
    </details>
  );
}
