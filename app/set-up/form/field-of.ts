/**
 * The field that a problem belongs to: its path with "_" for ".", cut from the end until the form has such a field
 * ("checkpoints_min.2" is of "checkpoints_min"), or the only field that is a part of it ("set" is said at
 * "set_value"). null = of no field of this form.
 */
export function fieldOf(path: string, fields: readonly string[]): string | null {
  const parts = path.split('.').filter((part) => part !== 'body');
  for (let length = parts.length; length > 0; length--) {
    const name = parts.slice(0, length).join('_');
    if (fields.includes(name)) return name;
  }
  const inside = fields.filter((field) => field.startsWith(`${parts.join('_')}_`));
  return inside.length === 1 ? (inside[0] ?? null) : null;
}
