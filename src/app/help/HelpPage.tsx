/** The help page: the job in six steps, the method in pictures, what keys do, what can hurt. */
import type { ReactNode } from 'react';
import { CAUTIONS } from '#handoff/cautions.ts';
import { AllowanceFigure } from './AllowanceFigure.tsx';
import { KeyTable } from './KeyTable.tsx';
import { LevelsFigure } from './LevelsFigure.tsx';
import { LimitsFigure } from './LimitsFigure.tsx';
import { RunFigure } from './RunFigure.tsx';
import { UndercutFigure } from './UndercutFigure.tsx';

export function HelpPage() {
  return (
    <main>
      <p>
        <a href="./index.html">Back to the workbench</a>
      </p>
      <h1>How Isobath works</h1>
      <Steps />
      <Figure title="The bath goes sideways too" picture={<UndercutFigure />}>
        Under the maskant the etch reaches sideways as far as it goes down, times the <b>etch factor</b>{' '}
        (undercut / depth, here 1). The opening is therefore scribed smaller than the pocket. Measure rate and
        factor on a coupon before the run.
      </Figure>
      <Figure title="Deepest first, one stage after another" picture={<RunFigure />}>
        The deepest floor is in the bath from the first dip to the last. A line that is peeled later is sealed
        until its turn. The colours show which stage removed the metal, as in the section below the sheet.
      </Figure>
      <Figure title="Why lines stand so far back" picture={<AllowanceFigure />}>
        A wall keeps moving in every later stage. It is a quarter round about the scribe line, and has to pass
        the drawn line at the depth of the floor beside it. A step of 0.8 mm at 3 mm depth asks for 2.04 mm,
        not for 0.8.
      </Figure>
      <Figure title="As few levels as tolerances allow" picture={<LevelsFigure />}>
        Each stage costs a peel, a dip and a rinse. Every bar is what a region accepts; a level that crosses a
        bar serves it. Isobath finds the fewest levels, then moves them to the middle of the bars.
      </Figure>
      <Figure title="What no bath makes" picture={<LimitsFigure />}>
        A pocket narrower than twice its undercut has no opening. A land narrower than the undercut of both
        its neighbours is gone. An inside corner sharper than the undercut comes out round. Findings say
        where, why and what would help.
      </Figure>
      <section>
        <h2>Keys</h2>
        <KeyTable />
      </section>
      <section>
        <h2>What can hurt</h2>
        <ul className="cautions">
          {CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
    </main>
  );
}

function Steps() {
  return (
    <section>
      <h2>The job, end to end</h2>
      <ol className="steps">
        <li>
          <b>Open a drawing</b> (DXF): drop it on the window, paste it, or pick it. The findings at the right
          say what is wrong with it, and where.
        </li>
        <li>
          <b>Say the sheet and the bath</b> in the line at the top: thickness, etch factor, rate.
        </li>
        <li>
          <b>Give each region its depth</b>: pick it on the sheet, type the depth or what is to be left, and
          its tolerance. Regions without one stay land.
        </li>
        <li>
          <b>Read the ladder</b> at the left: a line for each level, the space between two lines a stage.
          Upwards it is the run, downwards the part. Drag a line to move its level; drag a picked region onto
          a line to join it.
        </li>
        <li>
          <b>Look before metal is wet</b>: draw the cut across the sheet for a section, move the clock to any
          minute, turn the relief.
        </li>
        <li>
          <b>Correct the findings, then hand off</b>: the files are at the right, below. A stop keeps back
          every file that could be cut from.
        </li>
      </ol>
    </section>
  );
}

interface FigureProps {
  readonly title: string;
  readonly picture: ReactNode;
  readonly children: ReactNode;
}

function Figure({ title, picture, children }: FigureProps) {
  return (
    <section>
      <h2>{title}</h2>
      <figure>
        {picture}
        <figcaption>{children}</figcaption>
      </figure>
    </section>
  );
}
