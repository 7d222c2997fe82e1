import { GLYPH_SHAPES, TAG_GLYPHS } from '../../shared-types/rules/tag-glyphs.ts';
import type { TagKind } from '../../shared-types/tags.ts';
import './glyphs.css';

/** A tag as it stands on the board and on paper: letter, shape, hatch; `order` in a badge at the upper right. */
export function TagGlyph({ kind, size = 20, order }: { kind: TagKind; size?: number; order?: number | null }) {
  const glyph = TAG_GLYPHS[kind];
  const shape = GLYPH_SHAPES[glyph.shape];
  const fill = glyph.colour ?? 'none';
  return (
    <svg
      className="tag-glyph"
      width={size}
      height={size}
      viewBox="-12 -12 24 24"
      role="img"
      aria-label={order ? `${glyph.name} ${order}` : glyph.name}
    >
      {shape === 'circle' ? (
        <circle r="9.500" className="outline" />
      ) : (
        <polygon
          points={shape.map(([x, y]) => `${(x * 10.5).toFixed(2)},${(-y * 10.5).toFixed(2)}`).join(' ')}
          fill={fill}
          fillOpacity={0.28}
          className="outline"
        />
      )}
      <text y="4.500" className="letter">
        {glyph.letter}
      </text>
    </svg>
  );
}
