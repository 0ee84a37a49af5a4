/** What was read, what it comes to, what a coupon says of the edges, and what can still be done after the run. */
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { FactorPanel } from './FactorPanel.tsx';
import { ReadingList } from './ReadingList.tsx';
import { ResultTables } from './ResultTables.tsx';
import { ReworkPanel } from './ReworkPanel.tsx';
import { type TankTab, useTank } from './tank-context.ts';

export function TankTabs() {
  const { tab, setTab, record } = useTank();
  const count = record.result?.readings?.length ?? 0;
  return (
    <Tabs className="tank-tabs" selectedKey={tab} onSelectionChange={(key) => setTab(key as TankTab)}>
      <TabList aria-label="The run so far">
        <Tab id="readings">Readings{count > 0 && ` (${count})`}</Tab>
        <Tab id="result">Expected result</Tab>
        <Tab id="factor">After a coupon</Tab>
        <Tab id="rework">Rework</Tab>
      </TabList>
      <TabPanel id="readings">
        <ReadingList />
      </TabPanel>
      <TabPanel id="result">
        <ResultTables />
      </TabPanel>
      <TabPanel id="factor">
        <FactorPanel />
      </TabPanel>
      <TabPanel id="rework">
        <ReworkPanel />
      </TabPanel>
    </Tabs>
  );
}
