/**
 * The panel at the side: five subjects in the order of the job, each with its state in words, one of them open. Folded, their
 * icons are the rail; in a narrow window the open one lies over the sheet.
 */
import {
  ChevronDown,
  Layers,
  type LucideIcon,
  Minus,
  PackageCheck,
  PencilRuler,
  Ruler,
  TriangleAlert,
} from 'lucide-react';
import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';
import { PANEL_TITLES, PANELS, type PanelName } from '#app/state/layout-state.ts';
import { BrokenView } from '#app/views/BrokenView.tsx';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { DrawingPanel } from '#app/views/drawing/DrawingPanel.tsx';
import { HandoffPanel } from '#app/views/handoff/HandoffPanel.tsx';
import { StockPanel } from '#app/views/job/StockPanel.tsx';
import { RequirementsPanel } from '#app/views/requirements/RequirementsPanel.tsx';
import { FindingsSubject } from '#app/views/returned/FindingsSubject.tsx';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { useLayout, useWorkbench } from '#app/views/workbench-context.ts';
import { type Badge, useBadges } from './use-badges.ts';
import './side.css';

interface Subject {
  readonly icon: LucideIcon;
  readonly body: () => ReactNode;
  /** Once opened it stays, out of sight: what is typed in part is not lost. */
  readonly isKept?: boolean;
}

const SUBJECTS: Readonly<Record<PanelName, Subject>> = {
  drawing: { icon: PencilRuler, body: DrawingPanel, isKept: true },
  requirements: { icon: Ruler, body: RequirementsPanel },
  stock: { icon: Layers, body: StockPanel, isKept: true },
  findings: { icon: TriangleAlert, body: FindingsSubject },
  handoff: { icon: PackageCheck, body: HandoffPanel },
};

export function SidePanel() {
  const panel = useLayout((state) => state.panel);
  const badges = useBadges();
  return (
    <aside className={panel === undefined ? 'side folded' : 'side'} aria-label="Job">
      <Rail panel={panel} badges={badges} />
      <div className="subjects" hidden={panel === undefined}>
        {PANELS.map((name) => (
          <SubjectRow key={name} name={name} isOpen={name === panel} badge={badges[name]} />
        ))}
      </div>
    </aside>
  );
}

interface RailProps {
  readonly panel: PanelName | undefined;
  readonly badges: Readonly<Record<PanelName, Badge>>;
}

function Rail({ panel, badges }: RailProps) {
  const { layout } = useWorkbench();
  return (
    <div className="rail">
      {PANELS.map((name) => {
        const { icon } = SUBJECTS[name];
        const { words, severity } = badges[name];
        return (
          <span key={name} className={name === panel ? 'rail-place open' : 'rail-place'}>
            <IconButton
              icon={icon}
              name={`${PANEL_TITLES[name]}: ${words}`}
              tipPlacement="left"
              isPressed={name === panel}
              onPress={() => layout.setState({ panel: name === panel ? undefined : name })}
            />
            {severity !== undefined && <SeverityShape severity={severity} />}
          </span>
        );
      })}
    </div>
  );
}

interface SubjectRowProps {
  readonly name: PanelName;
  readonly isOpen: boolean;
  readonly badge: Badge;
}

function SubjectRow({ name, isOpen, badge }: SubjectRowProps) {
  const { layout } = useWorkbench();
  const { icon: Icon, body: Body, isKept = false } = SUBJECTS[name];
  const title = PANEL_TITLES[name];
  const [wasOpen, setWasOpen] = useState(isOpen);
  if (isOpen && !wasOpen) setWasOpen(true);
  const Sign = isOpen ? Minus : ChevronDown;
  const headId = `panel-${name}`;
  return (
    <section className={isOpen ? 'subject open' : 'subject'} aria-labelledby={headId}>
      <h2>
        <Button
          className="subject-head"
          aria-expanded={isOpen}
          onPress={() => layout.setState({ panel: isOpen ? undefined : name })}
        >
          <Icon size={16} strokeWidth={1.75} aria-hidden="true" />
          <span className="title" id={headId}>
            {title}
          </span>
          <span className={`badge ${badge.severity ?? ''}`}>{badge.words}</span>
          <Sign size={16} aria-hidden="true" />
        </Button>
      </h2>
      {(isOpen || (isKept && wasOpen)) && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: scrolls, so that keys must reach it
        <div className="subject-body" tabIndex={0} hidden={!isOpen}>
          <BrokenView name={title}>
            <Body />
          </BrokenView>
        </div>
      )}
    </section>
  );
}
