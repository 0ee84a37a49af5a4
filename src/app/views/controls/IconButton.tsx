/** A button that shows an icon alone; its name and its key stand in the tooltip, and for readers of the screen. */
import type { LucideIcon } from 'lucide-react';
import { Button } from 'react-aria-components';
import { Tip } from './Tip.tsx';

interface IconButtonProps {
  readonly icon: LucideIcon;
  readonly name: string;
  readonly keys?: string;
  readonly isDisabled?: boolean;
  readonly className?: string;
  readonly onPress?: () => void;
  readonly tipPlacement?: 'top' | 'left';
  /** Set while what it opens is open. */
  readonly isPressed?: boolean;
}

export function IconButton({
  icon: Icon,
  name,
  keys,
  isPressed,
  tipPlacement = 'top',
  className = '',
  ...rest
}: IconButtonProps) {
  return (
    <Tip words={name} keys={keys} placement={tipPlacement}>
      <Button
        className={`icon-button ${className}`}
        aria-label={name}
        {...(isPressed === undefined ? {} : { 'aria-expanded': isPressed })}
        {...rest}
      >
        <Icon size={16} strokeWidth={1.75} aria-hidden="true" />
      </Button>
    </Tip>
  );
}
