import { TAG_GLYPHS } from '../../shared-types/rules/tag-glyphs.ts';
import { tagsOf } from '../editing/tags.ts';
import { useDocument } from '../state/use-app.ts';
import { Section } from '../widgets/Section.tsx';
import { TagDetail, TagNote } from './TagDetail.tsx';

/** The tags of one part with their fields and notes. */
export function TagFields({ refdes }: { refdes: string }) {
  const tags = tagsOf(useDocument(), refdes);
  return tags.map((tag) => (
    <Section key={tag.id} title={TAG_GLYPHS[tag.kind].name}>
      <TagDetail tag={tag} />
      <TagNote tag={tag} />
    </Section>
  ));
}
