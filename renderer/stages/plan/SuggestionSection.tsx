import { useState } from 'react';
import { Button as BareButton } from 'react-aria-components';
import type { Suggestion } from '../../../shared-types/rules/suggestions.ts';
import type { TagKind } from '../../../shared-types/tags.ts';
import { actionReason, takeWords } from '../../../shared-types/words/planning.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { planWords as words } from '../../../shared-types/words/window/plan.ts';
import { asSentence } from '../../../shared-types/words/window/sentence.ts';
import { openSuggestions } from '../../actions/edit-actions.ts';
import { takeSuggestions } from '../../editing/suggestions.ts';
import { showPart } from '../../state/show-part.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TagGlyph } from '../../widgets/TagGlyph.tsx';

const SHOWN_AT_FIRST = 6;
const glyphs: Record<Suggestion['kind'], TagKind> = { remove: 'remove', shield: 'shield', secure: 'watchPoint' };

/** What planning advises, with its reason; taken one by one or all at once. */
export function SuggestionSection() {
  const app = useApp();
  const [all, setAll] = useState(false);
  const assessment = useAppState((state) => state.evaluation.assessment);
  const document = useDocument();
  const open = openSuggestions(app.store.get());
  const shown = all ? open : open.slice(0, SHOWN_AT_FIRST);
  const take = (taken: readonly Suggestion[]) =>
    app.bench.apply(`${editLabels.suggestion}: ${takeWords(taken)}`, (before) => takeSuggestions(before, taken));
  return (
    <Section
      title={words.suggestions}
      count={open.length > 0 ? open.length : undefined}
      action={
        open.length > 1 && (
          <Button small onPress={() => take(open)}>
            {takeWords(open)}
          </Button>
        )
      }
    >
      {open.length === 0 && (
        <p className="empty">
          {assessment
            ? words.noSuggestions
            : document.plan.sites.length > 0
              ? words.noSuggestionsYet
              : words.noSuggestionsSite}
        </p>
      )}
      <ul className="rows">
        {shown.map((suggestion) => (
          <SuggestionRow
            key={`${suggestion.kind} ${suggestion.refdes}`}
            suggestion={suggestion}
            onTake={() => take([suggestion])}
          />
        ))}
      </ul>
      {shown.length < open.length && (
        <Button look="link" small onPress={() => setAll(true)}>
          {words.moreOf(open.length - shown.length)}
        </Button>
      )}
    </Section>
  );
}

function SuggestionRow({ suggestion, onTake }: { suggestion: Suggestion; onTake: () => void }) {
  const app = useApp();
  const { measures } = useUnits();
  const selected = useAppState((state) => state.selection.parts.has(suggestion.refdes));
  const verb = takeWords([suggestion]).replace(` ${suggestion.refdes}`, '');
  return (
    <li className="row" data-selected={selected ? '' : undefined}>
      <TagGlyph kind={glyphs[suggestion.kind]} />
      <BareButton className="who" onPress={() => showPart(app, suggestion.refdes)}>
        <span className="name">{suggestion.refdes}</span>
        <span className="why">{asSentence(actionReason(suggestion.action, measures))}</span>
      </BareButton>
      <span className="ends">
        <Button small onPress={onTake}>
          {verb}
          <span className="visually-hidden">{suggestion.refdes}</span>
        </Button>
      </span>
    </li>
  );
}
