import { useRef } from 'preact/hooks';

interface Props {
  readonly label: string;
  readonly hint?: string;
  /** What it is for, where several such buttons stand on a page. */
  readonly about?: string;
  readonly accept: string;
  readonly onFile: (name: string, bytes: Uint8Array) => void | Promise<void>;
}

/** A button that asks for a file and hands over its bytes; also takes one dropped on it. */
export function FileButton({ label, hint, about, accept, onFile }: Props) {
  const input = useRef<HTMLInputElement>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (file) await onFile(file.name, new Uint8Array(await file.arrayBuffer()));
  };
  return (
    <span
      class="file-button"
      onDragOver={(e) => e.preventDefault()}
      onDrop={(e) => {
        e.preventDefault();
        e.stopPropagation();
        void take(e.dataTransfer?.files[0]);
      }}
    >
      <button type="button" class="button button-box" onClick={() => input.current?.click()}>
        {label}
        {about && <span class="unseen">{about}</span>}
        {hint && <small>{hint}</small>}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept={accept}
        aria-label={about ? `${label}: ${about}` : label}
        onChange={(e) => {
          const field = e.currentTarget;
          void take(field.files?.[0]).finally(() => {
            field.value = '';
          });
        }}
      />
    </span>
  );
}
