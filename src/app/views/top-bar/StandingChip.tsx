/** The state of the plan, always visible: shape, colour and words. A press shows what is still open, and leads there. */
import { Check, ChevronDown, ChevronRight, CircleDashed, LoaderCircle } from 'lucide-react';
import { useState } from 'react';
import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components';
import { questionsLeft } from '#app/state/opening/opening-steps.ts';
import { bySeverity, type Standing, standingOf } from '#app/state/plan-standing.ts';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { useGoTo } from '#app/views/use-go-to.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import type { Finding } from '#findings/finding.ts';
import { sayInLabels } from '#job/field-labels.ts';
import { RunWords } from './RunLine.tsx';

export function StandingChip() {
  const [isOpen, setOpen] = useState(false);
  const derived = useWorkbenchState((state) => state.derived);
  const document = useDocument();
  const standing = standingOf(derived, document?.drawing !== undefined, document && questionsLeft(document));
  return (
    <DialogTrigger isOpen={isOpen} onOpenChange={setOpen}>
      <Button className={`chip-state ${standing.kind}`} aria-label={`State of the plan: ${standing.words}`}>
        <StandingShape kind={standing.kind} />
        {standing.words}
        <ChevronDown size={14} aria-hidden="true" />
      </Button>
      <Popover className="float" placement="bottom start" offset={2}>
        <Dialog className="standing" aria-label="State of the plan">
          <StandingList standing={standing} onGone={() => setOpen(false)} />
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

function StandingShape({ kind }: Pick<Standing, 'kind'>) {
  if (kind === 'stop' || kind === 'warn' || kind === 'note') return <SeverityShape severity={kind} />;
  if (kind === 'ready') return <Check size={16} aria-hidden="true" />;
  const Icon = kind === 'busy' ? LoaderCircle : CircleDashed;
  return <Icon size={16} aria-hidden="true" />;
}

interface StandingListProps {
  readonly standing: Standing;
  readonly onGone: () => void;
}

function StandingList({ standing, onGone }: StandingListProps) {
  const { layout } = useWorkbench();
  const page = useWorkbenchState((state) => state.derived.page);
  const { stops, warnings, notes } = bySeverity(page?.findings ?? []);
  const listed = [...stops, ...warnings];
  const openFindings = () => {
    layout.setState({ panel: 'findings' });
    onGone();
  };
  return (
    <>
      <h2>{headOf(standing, stops.length, warnings.length)}</h2>
      {/* A narrow window has no room for it in its bar. */}
      <p className="run narrow-only">
        <RunWords />
      </p>
      <ul>
        {listed.slice(0, MOST).map((finding, index) => (
          <StandingRow key={`${finding.code} ${index.toString()}`} finding={finding} onGone={onGone} />
        ))}
      </ul>
      <Button className="plain" onPress={openFindings}>
        {listed.length > MOST && `${listed.length - MOST} more, `}
        {notes.length === 0 ? 'Open the findings' : `${counted(notes.length, 'note')} in Findings`}
      </Button>
    </>
  );
}

/** More rows than these are read in the panel. */
const MOST = 6;

function StandingRow({ finding, onGone }: { readonly finding: Finding; readonly onGone: () => void }) {
  const { layout } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const goTo = useGoTo();
  const { title, reason } = sayInLabels(finding, unit);
  const regions = finding.place.regions?.join(', ');
  const go = () => {
    layout.setState({ panel: 'findings' });
    goTo(finding.place);
    onGone();
  };
  return (
    <li>
      <Button onPress={go}>
        <SeverityShape severity={finding.severity} />
        <span>
          <strong>
            {title}
            {regions !== undefined && regions !== '' && `, ${regions}`}
          </strong>
          <span className="aside">{reason}</span>
        </span>
        <ChevronRight size={16} aria-hidden="true" />
      </Button>
    </li>
  );
}

function headOf({ kind, words }: Standing, stops: number, warnings: number): string {
  if (stops > 0) return `${counted(stops, 'stop')} ${stops === 1 ? 'holds' : 'hold'} files back`;
  if (warnings > 0) return `${counted(warnings, 'warning')} to look at; files can be saved`;
  return kind === 'ready' ? 'No stops, no warnings' : words;
}
