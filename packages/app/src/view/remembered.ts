/** Something that takes time to work out, kept until what it is worked out of is another. */
export class Remembered<T> {
  private kept: { readonly of: readonly unknown[]; readonly value: T } | null = null;

  of(parts: readonly unknown[], workOut: () => T): T {
    const { kept } = this;
    if (kept !== null && parts.every((part, at) => part === kept.of[at])) return kept.value;
    const value = workOut();
    this.kept = { of: parts, value };
    return value;
  }
}
