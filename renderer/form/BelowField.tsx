import type { ReactNode } from 'react';
import { FieldError, Text } from 'react-aria-components';

/** What stands below a field of the library: what it is for, and what is wrong with it. A screen reader reads both with it. */
export function BelowField({ hint, problem }: { hint: ReactNode; problem: ReactNode }) {
  return (
    <>
      {hint && (
        <Text slot="description" className="soft">
          {hint}
        </Text>
      )}
      <FieldError className="field-error">{problem}</FieldError>
    </>
  );
}
