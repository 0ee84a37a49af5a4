/** A tooltip on a control: what it does, and its key. */
import type { ReactElement } from 'react';
import { Tooltip, TooltipTrigger } from 'react-aria-components';

interface TipProps {
  readonly words: string;
  readonly keys?: string | undefined;
  readonly placement?: 'top' | 'left';
  readonly children: ReactElement;
}

export function Tip({ words, keys, placement = 'top', children }: TipProps) {
  return (
    <TooltipTrigger delay={500} closeDelay={0}>
      {children}
      <Tooltip className="tip" offset={6} placement={placement}>
        {words}
        {keys !== undefined && <kbd>{keys}</kbd>}
      </Tooltip>
    </TooltipTrigger>
  );
}
