/** What else can be asked of the picked regions: how true their edges are, from which face they are etched, and cut-outs with their tabs. */
import { fromJobUnits } from '#app/state/edits/edit-figures.ts';
import {
  cutOut,
  type Requirement,
  requirementOf,
  type TabsGiven,
  withEdge,
  withFace,
  withSplit,
  withTabs,
} from '#app/state/edits/edit-requirement.ts';
import { regionTargets } from '#app/state/region-targets.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { ChoiceField } from '#app/views/job/ChoiceField.tsx';
import { RowsField } from '#app/views/job/RowsField.tsx';
import { wordsOf } from '#app/views/job/words-of.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { NumberField } from '#app/views/NumberField.tsx';
import { Disclosure } from '#app/views/planning/Disclosure.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { showLength } from '#units/show-length.ts';

const { members } = JOB.members.requirements.item;

interface MoreAskedProps {
  readonly job: JobFile;
  /** What is picked, as steps name it. */
  readonly names: string;
}

export function MoreAsked({ job, names }: MoreAskedProps) {
  const asked = useAsked(job);
  return (
    <Disclosure title="Edges, faces, cut-outs">
      <EdgeFields {...{ job, names, asked }} />
      <FaceFields {...{ job, names, asked }} />
      <CutOutFields {...{ job, names, asked }} />
    </Disclosure>
  );
}

interface AskedProps extends MoreAskedProps {
  /** Of the first region picked. */
  readonly asked: Requirement | undefined;
}

function useAsked(job: JobFile): Requirement | undefined {
  const { store } = useWorkbench();
  const first = useWorkbenchState((state) => state.session.selection[0]);
  const target = first === undefined ? undefined : regionTargets(store.getState()).get(first);
  return target && requirementOf(job, target);
}

function EdgeFields({ job, names, asked }: AskedProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const sides = ['plus', 'minus'] as const;
  return (
    <div className="pair">
      {sides.map((side) => {
        const field = members.edge.members[side];
        const given = asked?.edge?.[side];
        return (
          <LengthField
            key={side}
            of={field}
            length={given === undefined ? undefined : fromJobUnits(job, given)}
            placeholder="none"
            onTake={(length) =>
              actions.changeSelection(
                (each, now) => withEdge(now, each, { [side]: length }),
                `${field.label.toLowerCase()} ${showLength(length, unit)} of ${names}`,
              )
            }
            onClear={() =>
              actions.changeSelection(({ edge: _, ...rest }) => rest, `edges of ${names} as the job says`)
            }
          />
        );
      })}
    </div>
  );
}

function FaceFields({ job, names, asked }: AskedProps) {
  const { actions } = useWorkbench();
  const face = asked?.face ?? 'near';
  const words = wordsOf(members.face);
  const near = typeof asked?.split === 'number' ? fromJobUnits(job, asked.split) : undefined;
  const split = (length: number | undefined) =>
    actions.changeSelection(
      (each, now) => withSplit(now, each, length),
      `share of the near face of ${names}`,
    );
  return (
    <>
      <ChoiceField
        label={members.face.label}
        value={face}
        onTake={(chosen) =>
          actions.changeSelection(
            (each) => withFace(each, chosen as 'near' | 'far' | 'both'),
            `${names} on ${words[chosen] ?? chosen}`,
          )
        }
      >
        {Object.entries(words).map(([value, said]) => (
          <option key={value} value={value}>
            {said}
          </option>
        ))}
      </ChoiceField>
      {face === 'both' && asked?.thickness !== undefined && (
        <LengthField
          of={members.split}
          length={near}
          placeholder="half"
          within={{ most: sheetThickness(job) }}
          onTake={split}
          onClear={() => split(undefined)}
        />
      )}
    </>
  );
}

function CutOutFields({ job, names, asked }: AskedProps) {
  const { actions } = useWorkbench();
  if (asked?.through === undefined) {
    return (
      <button type="button" onClick={() => actions.changeSelection(cutOut, `${names} cut out`)}>
        Cut out by etching
      </button>
    );
  }
  const { through } = asked;
  const reach = (given: true | number) =>
    actions.changeSelection((each) => ({ ...each, through: given }), `depth of the cut-out ${names}`);
  return (
    <>
      <LengthField
        of={members.through.parts.depth}
        length={through === true ? undefined : fromJobUnits(job, through)}
        placeholder="as planned"
        onTake={(length) => reach(length / fromJobUnits(job, 1))}
        onClear={() => reach(true)}
      />
      <TabFields {...{ job, names, asked }} />
    </>
  );
}

function TabFields({ job, names, asked }: AskedProps) {
  const { actions } = useWorkbench();
  const tabs = asked?.tabs;
  const width = tabs === undefined ? members.tabs.parts.width.usual : fromJobUnits(job, tabs.width);
  const isEven = tabs !== undefined && tabs.at === undefined;
  const take = (next: TabsGiven | undefined) =>
    actions.changeSelection((each, now) => withTabs(now, each, next), `tabs of ${names}`);
  return (
    <>
      <LengthField
        of={members.tabs.parts.width}
        length={tabs === undefined ? undefined : width}
        usual={members.tabs.parts.width.usual}
        onTake={(length) => take({ ...tabs, width: length })}
      />
      <RowsField
        label={members.tabs.label}
        rows={tabs?.at ?? []}
        columns={['x', 'y']}
        onTake={(rows) => take({ width, at: rows.map(([x = 0, y = 0]) => [x, y] as const) })}
      />
      <NumberField
        of={members.tabs.parts.count}
        value={tabs?.count}
        usual={isEven ? 'as usual' : 'none'}
        onTake={(count) => take({ width, count })}
        onClear={() => take({ width })}
      />
      <button type="button" onClick={() => take(isEven ? undefined : { width })}>
        {isEven ? 'Take the tabs out' : 'Place tabs evenly'}
      </button>
    </>
  );
}
