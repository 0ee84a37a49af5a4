/** Where a job begins: drop or open a drawing, go on with a job that this browser keeps, or try a sample. */
import { ArrowLeft, ClipboardPaste, FolderOpen } from 'lucide-react';
import { Button } from 'react-aria-components';
import { fetchSample, SAMPLES, samplePicture } from '#app/state/opening/samples.ts';
import { useToast } from '#app/views/controls/toasts.ts';
import { openHere } from '#app/views/open-here.ts';
import { pickFiles } from '#app/views/pick-files.ts';
import { filesOfText } from '#app/views/read-files.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { JobsView } from './JobsView.tsx';
import { PartPictureView } from './PartPictureView.tsx';
import './start.css';

export function StartPage() {
  const { layout } = useWorkbench();
  const hasJob = useWorkbenchState((state) => state.history !== undefined);
  return (
    <main className="start over-all" aria-label="Jobs and samples">
      <div className="start-top">
        <OpenHere />
        <JobsView />
      </div>
      <section aria-labelledby="samples-heading">
        <h2 id="samples-heading">
          Samples <span className="aside">Open one and change it: samples stay as they are.</span>
        </h2>
        <ul className="samples">
          {SAMPLES.map((sample) => (
            <SampleCard key={sample.file} sample={sample} />
          ))}
        </ul>
      </section>
      <footer>
        {hasJob && (
          <Button className="plain" onPress={() => layout.setState({ over: 'nothing' })}>
            <ArrowLeft size={16} aria-hidden="true" /> Back to the job
          </Button>
        )}
        <span>Files stay on this computer.</span>
        <span>Isobath plans geometry and time. The site’s process specification decides.</span>
      </footer>
    </main>
  );
}

function OpenHere() {
  const workbench = useWorkbench();
  const say = useToast();
  const paste = async () => {
    try {
      const text = await navigator.clipboard.readText();
      if (text.trim() === '') say('There is no text to paste');
      else await openHere(workbench, filesOfText(text));
    } catch {
      say('The browser does not allow it: press Ctrl V');
    }
  };
  return (
    <section className="open-here" aria-labelledby="open-heading">
      <SteppedFloor />
      <h2 id="open-heading">Drop a drawing or a job here</h2>
      <p className="aside">DXF, or a saved job</p>
      <p className="row">
        <Button className="main" onPress={() => pickFiles(workbench)}>
          <FolderOpen size={16} aria-hidden="true" /> Open
        </Button>
        <Button onPress={paste}>
          <ClipboardPaste size={16} aria-hidden="true" /> Paste
        </Button>
      </p>
      <p className="aside">
        <kbd>Ctrl O</kbd> open <kbd>Ctrl V</kbd> paste
      </p>
    </section>
  );
}

function SampleCard({ sample }: { readonly sample: (typeof SAMPLES)[number] }) {
  const { actions, layout } = useWorkbench();
  const open = async () => {
    await actions.openSample(await fetchSample(sample));
    layout.setState({ over: 'nothing' });
  };
  const picture = samplePicture(sample);
  return (
    <li>
      <Button onPress={open}>
        {picture !== undefined && <PartPictureView picture={picture} />}
        <span className="sample-words">
          <strong>{sample.title}</strong>
          <span className="aside">{sample.teaches}</span>
        </span>
      </Button>
    </li>
  );
}

/** A floor in two steps, and the drop that makes it. */
function SteppedFloor() {
  return (
    <svg width="200" height="88" viewBox="0 0 200 88" aria-hidden="true">
      <path
        className="metal"
        d="M0 8H22C22 20 34 28 44 28H56C56 40 68 48 80 48H120C132 48 144 40 144 28H156C166 28 178 20 178 8H200V88H0Z"
      />
      <path
        className="face"
        d="M0 8H22C22 20 34 28 44 28H56C56 40 68 48 80 48H120C132 48 144 40 144 28H156C166 28 178 20 178 8H200"
      />
      <path className="drop" d="M100 0V36M92 28L100 36L108 28" />
    </svg>
  );
}
