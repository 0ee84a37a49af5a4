/** What the run does to the bath and to the air above it. */
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';

export function BathSheetView() {
  const sheet = useWorkbenchState(({ derived }) => derived.page?.results?.bathSheet);
  if (sheet === undefined) {
    return (
      <p className="aside">
        Calculated for aluminium in caustic soda only. For any other metal or bath ask its supplier and the
        site.
      </p>
    );
  }
  return (
    <>
      <dl>
        {figuresOf(sheet).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p className="aside">
        Least figures at 25&nbsp;°C, well mixed: hydrogen is flammable from 4&nbsp;% in air, and is to stay
        under a quarter of that. They are no design of an extraction; the site’s own specification and local
        codes decide.
      </p>
    </>
  );
}

function figuresOf({
  metal,
  caustic,
  hydrogen,
  load,
  peak,
}: NonNullable<PlanFile['bathSheet']>): (readonly [string, string])[] {
  return [
    ['Metal dissolved', mass(metal)],
    ['Caustic soda used up', mass(caustic)],
    ['Hydrogen at 25\u00a0°C', litres(hydrogen.at25C)],
    ['Hydrogen at 0\u00a0°C', litres(hydrogen.at0C)],
    [
      `Most hydrogen, ${peak.stage === 0 ? 'sizing' : `stage ${peak.stage}`}`,
      `${peak.hydrogen.toFixed(2)}\u00a0l/min`,
    ],
    ['Air to take away at least', `${(peak.ventilation / 1000).toFixed(2)}\u00a0m³/min`],
    ...(load === undefined ? [] : loadRows(load)),
  ];
}

type Load = NonNullable<NonNullable<PlanFile['bathSheet']>['load']>;

function loadRows({ before, after, limit }: Load): (readonly [string, string])[] {
  const sum = `${before.toFixed(1)} to ${after.toFixed(1)}\u00a0g/L`;
  return [
    ['Dissolved metal in the bath', sum],
    ['It may hold', `${limit.toFixed(1)}\u00a0g/L${after > limit ? ': over' : ''}`],
  ];
}

function litres(amount: number): string {
  return amount < 1000 ? `${amount.toFixed(1)}\u00a0l` : `${(amount / 1000).toFixed(2)}\u00a0m³`;
}

function mass(grams: number): string {
  return grams < 1000 ? `${grams.toFixed(1)}\u00a0g` : `${(grams / 1000).toFixed(2)}\u00a0kg`;
}
