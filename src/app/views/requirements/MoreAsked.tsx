/** What else can be asked of the picked regions: how true their edges are, from which face they are etched, and cut-outs with their tabs. */
import { fromJobUnits } from '#app/state/edits/edit-figures.ts';
import {
  cutOut,
  type Requirement,
  requirementOf,
  withEdge,
  withFace,
  withSplit,
  withTabs,
} from '#app/state/edits/edit-requirement.ts';
import { regionTargets } from '#app/state/region-targets.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { ChoiceField } from '#app/views/job/ChoiceField.tsx';
import { RowsField } from '#app/views/job/RowsField.tsx';
import { LengthField } from '#app/views/LengthField.tsx';
import { Disclosure } from '#app/views/planning/Disclosure.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { showLength } from '#units/show-length.ts';

const { members } = JOB.members.requirements.item;
/** mm; a drawn edge farther off is no edge. */
const MOST_OFF = 10;
/** mm; the job takes no depth or width of nothing. */
const LEAST = 0.01;
/** mm */
const USUAL_TAB = 2;
const WIDEST_TAB = 100;

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
        const { label } = members.edge.members[side];
        const given = asked?.edge?.[side];
        return (
          <LengthField
            key={side}
            label={label}
            length={given === undefined ? undefined : fromJobUnits(job, given)}
            placeholder="none"
            least={0}
            most={MOST_OFF}
            onTake={(length) =>
              actions.changeSelection(
                (each, now) => withEdge(now, each, { [side]: length }),
                `${label.toLowerCase()} ${showLength(length, unit)} of ${names}`,
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
  const { control, label } = members.face;
  const face = asked?.face ?? 'near';
  const words: Readonly<Record<string, string>> = control.as === 'choice' ? control.words : {};
  const near = typeof asked?.split === 'number' ? fromJobUnits(job, asked.split) : undefined;
  const split = (length: number | undefined) =>
    actions.changeSelection(
      (each, now) => withSplit(now, each, length),
      `share of the near face of ${names}`,
    );
  return (
    <>
      <ChoiceField
        label={label}
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
          label={members.split.label}
          length={near}
          placeholder="half"
          least={0}
          most={sheetThickness(job)}
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
        label="Each face etched to"
        length={through === true ? undefined : fromJobUnits(job, through)}
        placeholder="as planned"
        least={LEAST}
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
  const width = tabs === undefined ? USUAL_TAB : fromJobUnits(job, tabs.width);
  const at = tabs?.at ?? [];
  const take = (next: { width: number; at: readonly (readonly [number, number])[] }) =>
    actions.changeSelection((each, now) => withTabs(now, each, next), `tabs of ${names}`);
  return (
    <>
      <LengthField
        label="Width of tabs"
        length={tabs === undefined ? undefined : width}
        usual={USUAL_TAB}
        least={LEAST}
        most={WIDEST_TAB}
        onTake={(length) => take({ width: length, at })}
      />
      <RowsField
        label={members.tabs.label}
        rows={at}
        columns={['x', 'y']}
        onTake={(rows) => take({ width, at: rows.map(([x = 0, y = 0]) => [x, y] as const) })}
      />
    </>
  );
}
