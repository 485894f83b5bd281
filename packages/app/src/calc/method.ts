/** One input of a method, as its doc comment tells it. */
export interface MethodParam {
  readonly name: string;
  readonly meaning: string;
  readonly kind: 'number' | 'flag' | 'choice' | 'list';
  /** The unit the function takes; `-` is a plain number. */
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  readonly choices?: readonly string[];
  /** True where the choices are numbers, such as a mesh. */
  readonly numeric?: boolean;
  readonly optional?: boolean;
  /** The argument it is a field of, where the function takes an object. */
  readonly of?: string;
}

export interface MethodResult {
  /** Empty where the function gives one bare value. */
  readonly name: string;
  readonly meaning: string;
  readonly kind: 'number' | 'flag' | 'choice' | 'list' | 'text';
  readonly unit?: string;
}

/** A formula of the engine that can be run by its name. */
export interface Method {
  readonly name: string;
  readonly layer: string;
  readonly file: string;
  readonly purpose: string;
  readonly formula: string;
  /** The function's arguments in order; an object is put together from the params that are `of` it. */
  readonly args: readonly { readonly name: string; readonly object: boolean }[];
  readonly params: readonly MethodParam[];
  readonly results: readonly MethodResult[];
  readonly valid?: string;
  readonly source: string;
}
