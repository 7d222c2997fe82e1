import { armOf, codesOf, dividerSpan } from '../../../shared-types/rules/straps/divider.ts';
import type { StrapGroupOf } from '../../../shared-types/straps.ts';
import { SPAN_TABLE, spanVerdict } from '../../../shared-types/words/straps.ts';
import { strapWords as words } from '../../../shared-types/words/window/straps.ts';

const volts = (value: number) => value.toFixed(3);

/** Worst-case voltage of every setting of a divider beside its window. */
export function SpanTable({ group }: { group: StrapGroupOf<'divider'> }) {
  if (group.settings.length === 0) return null;
  return (
    <section>
      <h3>{words.windowsTitle}</h3>
      <table className="strap-spans">
        <thead>
          <tr>
            {SPAN_TABLE.heads.map((head) => (
              <th key={head}>{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {group.settings.map((setting) => {
            const span = dividerSpan(
              group,
              armOf(group, group.top, setting.top),
              armOf(group, group.bottom, setting.bottom),
            );
            const reading = span && codesOf(group, span);
            return (
              <tr key={setting.id}>
                <td>{setting.code}</td>
                <td className="name">{setting.label}</td>
                <td>{span ? volts(span.lowV) : ''}</td>
                <td>{span ? volts(span.nominalV) : ''}</td>
                <td>{span ? volts(span.highV) : ''}</td>
                <td className="name" data-loud={reading?.alone?.code === setting.code ? undefined : ''}>
                  {spanVerdict(setting.code, reading)}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
