import type { Finding } from '../../../shared-types/evaluation.ts';
import { alloyById } from '../../../shared-types/library/alloys.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import type { Site } from '../../../shared-types/plan.ts';
import type { PlanningContext } from '../context.ts';
import { holdsData } from '../judgement.ts';
import { commonPractice, FILLET_C, LEAD_IN_BISMUTH_C, MOST_REFLOWS, UNDERFILLED_OFF_C } from '../published.ts';
import { finding, onSite } from './make.ts';

const isBismuth = (alloyId: string): boolean => /bi\d/.test(alloyId);

/** Solder left on the pads mixes with the new joints: lead and bismuth must not meet; other mixtures need thought. */
function mixingFindings(site: Site): Finding[] {
  const off = alloyById(site.alloyOff);
  const on = alloyById(site.alloyOn);
  if (!off || !on || off.id === on.id) return [];
  const figures = { refdes: site.target, off: off.name, on: on.name, meltsC: LEAD_IN_BISMUTH_C.value };
  const meets = (isBismuth(off.id) && !on.leadFree) || (isBismuth(on.id) && !off.leadFree);
  if (meets) return [finding('lead-meets-bismuth', 'stop', onSite(site.id), figures, LEAD_IN_BISMUTH_C.source)];
  if (off.leadFree === on.leadFree && isBismuth(off.id) === isBismuth(on.id)) return [];
  const source = commonPractice('residue of the old alloy is wicked off and the pads are tinned anew');
  return [finding('alloys-differ', 'warn', onSite(site.id), figures, source)];
}

function targetPartFindings(context: PlanningContext, site: Site): Finding[] {
  const part = context.parts.get(site.target);
  const place = onSite(site.id);
  const about = { refdes: site.target };
  if (!part) return [finding('target-not-on-board', 'stop', place, about, null)];
  const partClass = classById(part.class);
  const found: Finding[] = [];
  if (!part.fitted) found.push(finding('target-not-fitted', 'warn', place, about, null));
  if (part.side !== site.side) found.push(finding('target-on-other-side', 'stop', place, about, null));
  if (partClass.alwaysRemove) {
    const source = commonPractice('cells and the like never see a heat run');
    found.push(finding('target-not-for-heat', 'stop', place, { ...about, className: partClass.name }, source));
  }
  if (part.underfilled)
    found.push(
      finding(
        'target-underfilled',
        'warn',
        place,
        { ...about, aboveC: UNDERFILLED_OFF_C.value },
        UNDERFILLED_OFF_C.source,
      ),
    );
  if (part.edgeBonded)
    found.push(finding('target-edge-bonded', 'warn', place, { ...about, residueC: FILLET_C.value }, FILLET_C.source));
  if (part.coated)
    found.push(finding('target-coated', 'warn', place, about, commonPractice('coating comes off before heat')));
  if (holdsData(partClass.id))
    found.push(
      finding('target-holds-data', 'warn', place, about, commonPractice('data is read out before the part comes off')),
    );
  return found;
}

/** Runs of other sites that melt this target's joints as well. */
function otherRunsFindings(context: PlanningContext, site: Site): Finding[] {
  const exposure = context.exposures.get(site.target);
  const own = context.plan.heatRuns.filter(
    (run) => run.siteIds.includes(site.id) && (run.kind === 'removal' || run.kind === 'installation'),
  ).length;
  if (!exposure || exposure.reflows <= own) return [];
  const figures = { refdes: site.target, reflows: exposure.reflows, own };
  return [finding('target-melts-in-other-runs', 'warn', onSite(site.id), figures, MOST_REFLOWS.source)];
}

/** What the sites themselves ask for. */
export function siteFindings(context: PlanningContext): Finding[] {
  const seen = new Set<string>();
  return context.plan.sites.flatMap((site) => {
    const twice = seen.has(site.target)
      ? [finding('target-has-two-sites', 'warn', onSite(site.id), { refdes: site.target }, null)]
      : [];
    seen.add(site.target);
    return [
      ...twice,
      ...targetPartFindings(context, site),
      ...mixingFindings(site),
      ...otherRunsFindings(context, site),
    ];
  });
}
