import { Check as Tick } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import type { StrapMove } from '../../../shared-types/rules/straps/plan-straps.ts';
import {
  MOVE_NAMES,
  moveLine,
  movePart,
  movesLine,
  moveWay,
  refusalWords,
  WAITS,
} from '../../../shared-types/words/straps.ts';
import { asSentence } from '../../../shared-types/words/window/sentence.ts';
import { strapEdits, strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { doMove, moveTagged, setStockFirst, tagMoves } from '../../editing/straps.ts';
import { showPart } from '../../state/show-part.ts';
import { strapPlanOf } from '../../state/strap-plan.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Button, IconButton } from '../../widgets/Buttons.tsx';
import { Check } from '../../widgets/Check.tsx';
import { Section } from '../../widgets/Section.tsx';

/** '1 relocate, 1 add, 1 off', then each move; what is refused, with the reason. */
export function MoveSection() {
  const app = useApp();
  const document = useDocument();
  const plan = strapPlanOf(document);
  const wanted = document.plan.straps.wanted.length > 0;
  const untagged = plan.moves.filter((move) => !moveTagged(document, move));
  return (
    <Section title={words.moves}>
      {!wanted && <p className="empty">{words.noWish}</p>}
      {wanted && plan.moves.length === 0 && plan.refused.length === 0 && <p>{words.settled}</p>}
      {plan.moves.length > 0 && <p className="moves-line">{movesLine(plan)}</p>}
      <ol className="rows">
        {plan.moves.map((move) => (
          <MoveRow key={moveLine(move)} move={move} />
        ))}
      </ol>
      {plan.refused.length > 0 && (
        <ul className="strap-refused">
          {plan.refused.map((refusal) => (
            <li key={JSON.stringify(refusal)}>
              <b>{words.refused(refusal.group)}</b> {asSentence(refusalWords(refusal))}
            </li>
          ))}
        </ul>
      )}
      {plan.moves.length > 0 && untagged.length === 0 && <p className="soft">{words.tagged}</p>}
      <div className="move-foot">
        {untagged.length > 0 && (
          <Button
            look="primary"
            onPress={() => app.bench.apply(strapEdits.tags, (before) => tagMoves(before, plan.moves))}
          >
            {words.tagMoves(untagged.length)}
          </Button>
        )}
        <Check
          on={document.plan.straps.stockFirst}
          onChange={(on) => app.bench.apply(strapEdits.stockFirst, (before) => setStockFirst(before, on))}
        >
          {words.stockFirst}
        </Check>
      </div>
    </Section>
  );
}

function MoveRow({ move }: { move: StrapMove }) {
  const app = useApp();
  const shown = move.from ?? move.to ?? '';
  return (
    <li className="row move-row" data-kind={move.kind}>
      <span className="move-mark" aria-hidden="true">
        {{ relocate: '→', add: '+', off: '−' }[move.kind]}
      </span>
      <BareButton
        className="who"
        aria-label={`${moveLine(move)}. ${words.show(shown)}`}
        onPress={() => showPart(app, shown)}
      >
        {MOVE_NAMES[move.kind]} <span className="name">{movePart(move)}</span>
        <span className="why">
          {moveWay(move)}
          {move.waits ? `, ${WAITS}` : ''}
        </span>
      </BareButton>
      <span className="ends">
        <IconButton
          icon={Tick}
          small
          label={words.done(moveLine(move))}
          onPress={() => app.bench.apply(strapEdits.move, (before) => doMove(before, move))}
        />
      </span>
    </li>
  );
}
