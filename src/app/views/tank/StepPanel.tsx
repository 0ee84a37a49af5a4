/** The step in hand. */
import { BathStep } from './BathStep.tsx';
import { GaugeStep } from './GaugeStep.tsx';
import { LeftStep } from './LeftStep.tsx';
import { CheckStep, PeelStep } from './PeelStep.tsx';
import { useTank } from './tank-context.ts';

export function StepPanel() {
  const { own } = useTank();
  switch (own.step) {
    case 'peel':
      return <PeelStep />;
    case 'check':
      return <CheckStep />;
    case 'bath':
      return <BathStep />;
    case 'sheet':
    case 'gauge':
      return <GaugeStep key={own.step} />;
    case 'left':
      return <LeftStep />;
  }
}
