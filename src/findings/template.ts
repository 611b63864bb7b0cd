/**
 * Names of the arguments an ICU message takes, nested ones too, as a union of literals: `{n, plural, one {# hole} other
 * {# holes}} of {id}` takes `n` and `id`. Text and the branches of a plural or select take turns, so that no stack is
 * needed: a brace that closes a text leads back to branches, one that closes branches leads back to a text.
 */
export type Arguments<Message extends string> = InText<Message>;

type InText<T extends string, Found = never> = T extends `${infer Before}{${infer After}`
  ? Before extends `${string}}${string}`
    ? LeaveText<T, Found>
    : Argument<After, Found>
  : T extends `${string}}${string}`
    ? LeaveText<T, Found>
    : Found;

type LeaveText<T extends string, Found> = T extends `${string}}${infer Rest}`
  ? InBranches<Rest, Found>
  : never;

type Argument<T extends string, Found> = T extends `${infer Inside}}${infer Rest}`
  ? Inside extends `${infer Name},${string}`
    ? T extends `${string},${infer Branches}`
      ? InBranches<Branches, Found | Name>
      : never
    : InText<Rest, Found | Inside>
  : never;

type InBranches<T extends string, Found> = T extends `${infer Before}}${infer Rest}`
  ? Before extends `${string}{${string}`
    ? T extends `${string}{${infer Text}`
      ? InText<Text, Found>
      : never
    : InText<Rest, Found>
  : Found;
