/** The buffers of all typed arrays in a value, each once: handing them over costs nothing, copying them would. */
export function buffersIn(value: unknown, found = new Set<ArrayBuffer>()): Set<ArrayBuffer> {
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
  } else if (Array.isArray(value)) {
    for (const item of value) buffersIn(item, found);
  } else if (typeof value === 'object' && value !== null) {
    for (const item of Object.values(value)) buffersIn(item, found);
  }
  return found;
}
