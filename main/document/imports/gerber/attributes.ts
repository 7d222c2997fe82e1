import type { ObjectAttributes } from './types.ts';

/** `TF`, `TA`, `TO` or `TD` with its fields; from an extended command or from a comment (`G04 #@! TA...`). */
export interface AttributeCommand {
  readonly command: 'TF' | 'TA' | 'TO' | 'TD';
  readonly name: string;
  readonly fields: readonly string[];
}

/** Gerber format specification, sections 5.1 (attributes) and 5.1.1 (attributes in comments). */
export function parseAttribute(text: string): AttributeCommand | null {
  const match = /^(TF|TA|TO|TD)([^,]*)(?:,(.*))?$/s.exec(text);
  if (!match) return null;
  const fields = match[3] === undefined ? [] : match[3].split(',').map(unescapeField);
  return { command: match[1] as AttributeCommand['command'], name: match[2].trim(), fields };
}

/** The attribute text inside a `G04` comment, or null for an ordinary comment. */
export function attributeInComment(word: string): string | null {
  const match = /^G0?4\s*#@!\s*(T[FAOD].*)$/s.exec(word);
  return match ? match[1].trim() : null;
}

/** Characters may be written as `\u002C` (section 3.4.4). */
function unescapeField(field: string): string {
  return field.replace(/\\u([0-9A-Fa-f]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** The attribute dictionaries of a reader; object attributes are handed out as one frozen value until they change. */
export class AttributeDictionary {
  readonly file = new Map<string, readonly string[]>();
  private readonly aperture = new Map<string, readonly string[]>();
  private readonly object = new Map<string, readonly string[]>();
  private current: ObjectAttributes | null = null;

  apply({ command, name, fields }: AttributeCommand): void {
    this.current = null;
    if (command === 'TF') this.file.set(name, fields);
    else if (command === 'TA') this.aperture.set(name, fields);
    else if (command === 'TO') this.object.set(name, fields);
    else this.remove(name);
  }

  apertureFunction(): string | undefined {
    return this.aperture.get('.AperFunction')?.join(',');
  }

  /** Object attributes now in force, without the aperture's function. */
  objectAttributes(): ObjectAttributes {
    if (this.current === null) {
      const pin = this.object.get('.P');
      const refdes = pin?.[0] ?? this.object.get('.C')?.[0];
      this.current = { refdes, pin: pin?.[1], pinName: pin?.[2] };
    }
    return this.current;
  }

  private remove(name: string): void {
    if (name === '') {
      this.aperture.clear();
      this.object.clear();
    } else if (!this.object.delete(name)) this.aperture.delete(name);
  }
}
