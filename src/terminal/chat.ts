import { clearLine, createInterface, cursorTo, type Interface } from "node:readline";
import type { Readable, Writable } from "node:stream";
import { type CompleteParts, completeLine } from "./complete-line.ts";
import type { TerminalSession } from "./session.ts";

/** Where a chat writes. On a terminal, what arrives while somebody types goes above the line being typed. */
export interface ChatOutput {
  write(text: string): void;
  /** While set, somebody is typing at this prompt. */
  typingAt(prompt: Interface | null): void;
}

export function chatOutput(stream: Writable): ChatOutput {
  let typing: Interface | null = null;
  return {
    write(text) {
      if (typing !== null) {
        cursorTo(stream, 0);
        clearLine(stream, 0);
      }
      stream.write(text);
      typing?.prompt(true);
    },
    typingAt(prompt) {
      typing = prompt;
    },
  };
}

export interface ChatParts extends CompleteParts {
  readonly input: Readable;
  readonly stream: Writable;
  readonly output: ChatOutput;
  /** A person types; otherwise lines come from a file or pipe and are echoed behind their prompt. */
  readonly isTty: boolean;
  /** Ends the chat from outside. */
  readonly signal: AbortSignal;
}

/** Reads lines and has the session answer them, one after the other, until `quit`, the end of input or the signal. */
export async function runChat(parts: ChatParts): Promise<void> {
  const lines = createInterface({
    input: parts.input,
    ...(parts.isTty ? ttyOptions(parts) : {}),
    crlfDelay: Number.POSITIVE_INFINITY,
  });
  const end = (): void => lines.close();
  parts.signal.addEventListener("abort", end);
  lines.on("SIGINT", () => {
    // What the shell prints next begins on a line of its own.
    parts.stream.write("\n");
    end();
  });
  try {
    await answerAll(parts, lines);
  } finally {
    parts.output.typingAt(null);
    parts.signal.removeEventListener("abort", end);
    lines.close();
  }
}

function ttyOptions(parts: ChatParts) {
  return {
    output: parts.stream,
    terminal: true,
    completer: (
      line: string,
      answer: (error: Error | null, result: [string[], string]) => void,
    ) => {
      completeLine(parts, line).then(
        ([offers, replaced]) => answer(null, [offers, replaced]),
        () => answer(null, [[], line]),
      );
    },
  };
}

async function answerAll(parts: ChatParts, lines: Interface): Promise<void> {
  ask(parts, lines);
  for await (const line of lines) {
    parts.output.typingAt(null);
    if (!parts.isTty) echo(parts, line);
    if (parts.signal.aborted || (await parts.session.say(line)) === "quit") return;
    ask(parts, lines);
  }
}

function ask({ isTty, output, session }: ChatParts, lines: Interface): void {
  if (!isTty) return;
  lines.setPrompt(session.prompt());
  lines.prompt();
  output.typingAt(lines);
}

function echo({ output, session }: { output: ChatOutput; session: TerminalSession }, line: string) {
  output.write(`${session.prompt()}${line}\n`);
}
