import { FindingSection, StopSection } from './FindingSection.tsx';
import { SiteSection } from './SiteSection.tsx';
import { SuggestionSection } from './SuggestionSection.tsx';
import { ThermocoupleSection } from './ThermocoupleSection.tsx';
import { TicketFold } from './TicketFold.tsx';
import { WatchSection } from './WatchSection.tsx';
import { WorkSection } from './WorkSection.tsx';
import '../stages.css';
import './plan.css';

/** What stops the work, then what is to be done: sites, suggestions, tags in the order of work. */
export function PlanStage() {
  return (
    <>
      <StopSection />
      <SiteSection />
      <SuggestionSection />
      <WorkSection />
      <WatchSection />
      <ThermocoupleSection />
      <FindingSection />
      <TicketFold />
    </>
  );
}
