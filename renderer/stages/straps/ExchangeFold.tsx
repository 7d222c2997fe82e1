import { ALLOYS } from '../../../shared-types/library/alloys.ts';
import type { Site } from '../../../shared-types/plan.ts';
import { differenceOf, parseCapacity } from '../../../shared-types/rules/straps/exchange.ts';
import type { ExchangedPart, SiteExchange } from '../../../shared-types/straps.ts';
import { capacityWords, differenceWords } from '../../../shared-types/words/straps.ts';
import { planWords } from '../../../shared-types/words/window/plan.ts';
import { asSentence } from '../../../shared-types/words/window/sentence.ts';
import { strapEdits, strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { exchangeOf, setExchange, setExchanged } from '../../editing/straps.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { Fold } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';

/** What comes off and what goes on at each site, side by side. */
export function ExchangeFold() {
  const { sites } = useDocument().plan;
  if (sites.length === 0) return null;
  return (
    <Fold title={words.exchanges} summary={sites.map((site) => site.target).join(', ')}>
      {sites.map((site) => (
        <SiteBlock key={site.id} site={site} />
      ))}
    </Fold>
  );
}

const AGREEING = (['not-checked', 'agrees', 'differs'] as const).map((id) => ({ id, label: words.agreeing[id] }));

function SiteBlock({ site }: { site: Site }) {
  const app = useApp();
  const exchange = exchangeOf(useDocument(), site.id);
  const set = (fields: Partial<Omit<SiteExchange, 'siteId'>>) =>
    app.bench.apply(strapEdits.exchange, (before) => setExchange(before, site.id, fields));
  return (
    <section className="exchange" aria-label={words.exchangeOf(site.target)}>
      <table>
        <caption>{words.exchangeOf(site.target)}</caption>
        <thead>
          <tr>
            <th />
            <th>{words.off}</th>
            <th>{words.on}</th>
          </tr>
        </thead>
        <tbody>
          {FIELDS.map((field) => (
            <tr key={field}>
              <th>{words.part[field]}</th>
              {(['off', 'on'] as const).map((which) => (
                <td key={which}>
                  <Field site={site} which={which} field={field} part={exchange[which]} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {differenceWords(differenceOf(exchange)).map((line) => (
        <p key={line} className="soft">
          {asSentence(line)}
        </p>
      ))}
      <Choice label={words.agrees} value={exchange.agrees} items={AGREEING} onChange={(agrees) => set({ agrees })} />
      <TextEntry
        label={words.agreesNote}
        value={exchange.agreesNote}
        longest={500}
        onDone={(agreesNote) => set({ agreesNote })}
      />
    </section>
  );
}

const FIELDS = ['name', 'marking', 'count', 'capacity', 'ballAlloy', 'heightMm', 'powerW'] as const;
type FieldProps = { site: Site; which: 'off' | 'on'; field: (typeof FIELDS)[number]; part: ExchangedPart };
type EntryProps = { label: string; part: ExchangedPart; put: (fields: Partial<ExchangedPart>) => void };

const ALLOY_ITEMS = [
  { id: 'unknown', label: planWords.alloyUnknown },
  ...ALLOYS.map((alloy) => ({ id: alloy.id, label: alloy.name })),
];

function Field({ site, which, field, part }: FieldProps) {
  const app = useApp();
  const put = (fields: Partial<ExchangedPart>) =>
    app.bench.apply(strapEdits.exchange, (before) => setExchanged(before, site.id, which, fields));
  const label = words.partField(words[which], words.part[field], site.target);
  const Entry = ENTRIES[field];
  return <Entry label={label} part={part} put={put} />;
}

const ENTRIES: Record<(typeof FIELDS)[number], (props: EntryProps) => React.ReactNode> = {
  name: ({ label, part, put }) => (
    <TextEntry bare label={label} value={part.name} longest={200} onDone={(name) => put({ name })} />
  ),
  marking: ({ label, part, put }) => (
    <TextEntry bare mono label={label} value={part.marking} longest={100} onDone={(marking) => put({ marking })} />
  ),
  count: ({ label, part, put }) => (
    <NumberEntry
      bare
      label={label}
      value={part.count}
      least={1}
      most={64}
      decimals={0}
      onChange={(count) => count && put({ count })}
    />
  ),
  capacity: CapacityEntry,
  ballAlloy: ({ label, part, put }) => (
    <Choice
      bare
      label={label}
      value={part.ballAlloy}
      items={ALLOY_ITEMS}
      onChange={(ballAlloy) => put({ ballAlloy })}
    />
  ),
  heightMm: ({ label, part, put }) => (
    <LengthEntry
      bare
      label={label}
      value={part.heightMm}
      least={0.01}
      most={200}
      emptyIs="–"
      onChange={(heightMm) => put({ heightMm })}
    />
  ),
  powerW: ({ label, part, put }) => (
    <NumberEntry
      bare
      label={label}
      value={part.powerW}
      unit="W"
      least={0}
      most={10_000}
      decimals={2}
      emptyIs="–"
      onChange={(powerW) => put({ powerW })}
    />
  ),
};

/** Words that are no capacity are told and nothing changes. */
function CapacityEntry({ label, part, put }: EntryProps) {
  const app = useApp();
  const done = (text: string) => {
    const capacity = parseCapacity(text);
    if (capacity || text.trim() === '') put({ capacity });
    else app.notify('warn', words.badCapacity(text));
  };
  return (
    <TextEntry
      bare
      mono
      label={label}
      value={part.capacity ? capacityWords(part.capacity) : ''}
      placeholder={words.part.capacityHint}
      longest={30}
      onDone={done}
    />
  );
}
