import { useId } from 'react';
import { GLYPH_SHAPES, type TagGlyph as Glyph, TAG_GLYPHS } from '../../shared-types/rules/tag-glyphs.ts';
import type { TagKind } from '../../shared-types/tags.ts';
import './glyphs.css';

type Props = { kind: TagKind; size?: number; order?: number | null; hollow?: boolean };

/** A tag as it stands on the board and on paper: letter, shape, hatch, colour. `hollow`: a tag that is not set. */
export function TagGlyph({ kind, size = 20, order, hollow }: Props) {
  const glyph = TAG_GLYPHS[kind];
  const shape = GLYPH_SHAPES[glyph.shape];
  const clip = useId();
  const label = order ? `${glyph.name} ${order}` : glyph.name;
  if (shape === 'circle')
    return (
      <svg className="tag-glyph" width={size} height={size} viewBox="-12 -12 24 24" role="img" aria-label={label}>
        <circle r="9.500" className="outline" />
        <text y="4.500" className="letter">
          {glyph.letter}
        </text>
      </svg>
    );
  const points = shape.map(([x, y]) => `${(x * 10.5).toFixed(2)},${(-y * 10.5).toFixed(2)}`).join(' ');
  return (
    <svg className="tag-glyph" width={size} height={size} viewBox="-12 -12 24 24" role="img" aria-label={label}>
      <clipPath id={clip}>
        <polygon points={points} />
      </clipPath>
      {!hollow && (
        <g clipPath={`url(#${clip})`}>
          <polygon points={points} fill={glyph.colour ?? 'none'} fillOpacity={0.42} />
          <path className="hatch" d={HATCHES[glyph.hatch]} />
        </g>
      )}
      <polygon points={points} className="outline" />
      <text y={glyph.shape === 'notched-rectangle' ? 6 : 4.5} className="letter">
        {glyph.letter}
      </text>
    </svg>
  );
}

const steps = [-20, -15, -10, -5, 0, 5, 10, 15, 20];
const verticals = steps.map((x) => `M${x + 2.5} -12V12`).join('');
const horizontals = steps.map((y) => `M-12 ${y + 2.5}H12`).join('');

/** Hatches as lines in the glyph's box; the shape cuts them. */
const HATCHES: Record<Glyph['hatch'], string> = {
  diagonal: steps.map((x) => `M${x - 12} 12L${x + 12} -12`).join(''),
  horizontal: horizontals,
  vertical: verticals,
  cross: verticals + horizontals,
  dots: steps.flatMap((x) => steps.map((y) => `M${x + 2.5} ${y + 2.5}h0.01`)).join(''),
  none: '',
};
