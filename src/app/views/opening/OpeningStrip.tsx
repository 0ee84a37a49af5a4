/** The strip over the sheet that leads from a drawing to its plan; it disappears when all is chosen. */
import { Check } from 'lucide-react';
import { useState } from 'react';
import { type OpeningStep, openingSteps, openStep, type StepName } from '#app/state/opening/opening-steps.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import { CircleStep } from './CircleStep.tsx';
import { EdgeStep } from './EdgeStep.tsx';
import { FigureStep } from './FigureStep.tsx';
import { LayerStep } from './LayerStep.tsx';
import { StockStep } from './StockStep.tsx';
import { UnitStep } from './UnitStep.tsx';
import { useCircles } from './use-circles.ts';
import { useFigures } from './use-figures.ts';
import './opening.css';

const BODIES: Readonly<Record<StepName, () => React.ReactNode>> = {
  unit: UnitStep,
  edge: EdgeStep,
  layers: LayerStep,
  stock: StockStep,
  circles: CircleStep,
  figures: FigureStep,
};

export function OpeningStrip() {
  const document = useDocument();
  const page = useWorkbenchState((state) => state.derived.page);
  const unit = useWorkbenchState((state) => state.session.unit);
  const figures = useFigures().length;
  const circles = useCircles().reduce((sum, group) => sum + group.circles.length, 0);
  const [looked, setLooked] = useState<StepName>();
  if (document === undefined) return null;
  const steps = openingSteps(document, { page, circles, figures, unit });
  const waiting = openStep(steps);
  if (waiting === undefined) return null;
  const shown = looked ?? waiting.name;
  const Body = BODIES[shown];
  return (
    <section className="opening" aria-label="From the drawing to the plan">
      <ol>
        {steps.map((step, index) => (
          <StepHead
            key={step.name}
            step={step}
            number={index + 1}
            isShown={step.name === shown}
            onPress={() => setLooked(step.name === waiting.name ? undefined : step.name)}
          />
        ))}
      </ol>
      <div className="opening-step" key={shown}>
        <Body />
      </div>
    </section>
  );
}

interface StepHeadProps {
  readonly step: OpeningStep;
  readonly number: number;
  readonly isShown: boolean;
  readonly onPress: () => void;
}

function StepHead({ step, number, isShown, onPress }: StepHeadProps) {
  return (
    <li>
      <button type="button" aria-current={isShown ? 'step' : undefined} onClick={onPress}>
        {step.isDone ? <Check size={16} aria-label="done" /> : <i aria-hidden="true">{number}</i>}
        <span>
          <strong>{step.title}</strong>
          <span className="aside">{step.words}</span>
        </span>
      </button>
    </li>
  );
}
