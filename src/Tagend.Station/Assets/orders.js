// The table of orders: a cell becomes a field where it is touched, and is sent when it is left. What is typed is kept in the
// browser until the station has it.
(() => {
    "use strict";
    const kept = cell => `cell:${cell.path}:${cell.row}:${cell.column}`;
    let open = null;

    const cellOf = button => ({
        path: document.getElementById("file").dataset.path,
        row: button.closest("tr").dataset.row,
        column: button.dataset.column,
        title: button.dataset.name || "",
        was: button.textContent,
    });

    const buttonOf = (row, column) => document.querySelector(`tr[data-row="${row}"] button.cell[data-column="${column}"]`);

    const edit = (button, text, at) => {
        const cell = cellOf(button);
        const field = document.createElement("input");
        field.className = "cell-field";
        field.value = text ?? cell.was;
        field.setAttribute("aria-label", button.closest("td").dataset.title);
        field.autocomplete = "off";
        field.spellcheck = false;
        button.hidden = true;
        button.before(field);
        field.focus();
        if (at) {
            field.setSelectionRange(at[0], at[1]);
        } else {
            field.select();
        }

        field.cell = cell;
        open = { ...cell, field };
        field.addEventListener("input", () => localStorage.setItem(kept(cell), field.value));
        field.addEventListener("keydown", event => {
            if (event.key === "Enter") {
                event.preventDefault();
                send(cell, field, button, true);
            } else if (event.key === "Escape") {
                field.value = cell.was;
                close(cell, field, button, true);
            }
        });
        field.addEventListener("blur", () => send(cell, field, button, false));
    };

    const close = (cell, field, button, isKey) => {
        localStorage.removeItem(kept(cell));
        open = open?.field === field ? null : open;
        field.remove();
        button.hidden = false;
        if (isKey) {
            button.focus();
        }
    };

    const send = (cell, field, button, isKey) => {
        if (!field.isConnected || field.dataset.sent === field.value) {
            return;
        }

        if (field.value.trim() === cell.was) {
            close(cell, field, button, isKey);
            return;
        }

        field.dataset.sent = field.value;
        const part = button.closest("section");
        htmx.ajax("POST", `${cell.path}/cell`, {
            source: field,
            target: part,
            swap: "outerHTML",
            values: {
                row: cell.row, column: cell.column, title: cell.title, was: cell.was, text: field.value.trim(),
                show: document.getElementById("file").dataset.show, set: part.id,
            },
        });
    };

    // The answer takes the place of the whole set: a field that was opened meanwhile comes back with what is in it.
    document.addEventListener("htmx:beforeSwap", event => {
        const field = event.detail.requestConfig.elt;
        if (!field.classList?.contains("cell-field")) {
            return;
        }

        if (event.detail.xhr.status >= 400) {
            delete field.dataset.sent;
            return;
        }

        const cell = field.cell;
        localStorage.removeItem(kept(cell));
        const other = open && open.field !== field && open.field.isConnected ? open : null;
        const selection = other && [other.field.selectionStart, other.field.selectionEnd];
        const text = other?.field.value;
        const hadFocus = document.activeElement === field || document.activeElement === document.body;
        open = null;
        setTimeout(() => {
            if (other) {
                const button = buttonOf(other.row, other.column);
                if (button) {
                    edit(button, text, selection);
                }
            } else if (hadFocus) {
                buttonOf(cell.row, cell.column)?.focus();
            }
        }, 30);
    });
    document.addEventListener("htmx:sendError", event => delete event.detail.requestConfig.elt.dataset?.sent);

    document.addEventListener("click", event => {
        const button = event.target.closest("button.cell");
        if (button) {
            edit(button);
        }
    });

    // What was typed before a reload and never sent.
    const path = document.getElementById("file")?.dataset.path;
    for (const key of Object.keys(localStorage).filter(k => path && k.startsWith(`cell:${path}:`))) {
        const [row, column] = key.split(":").slice(-2);
        const button = buttonOf(row, column);
        if (button && button.textContent !== localStorage.getItem(key)) {
            edit(button, localStorage.getItem(key));
        } else {
            localStorage.removeItem(key);
        }
    }

    // A file dropped anywhere on the place for it.
    const drop = document.querySelector("form.drop");
    if (drop) {
        for (const name of ["dragenter", "dragover", "dragleave", "drop"]) {
            drop.addEventListener(name, event => {
                event.preventDefault();
                drop.classList.toggle("is-over", name === "dragenter" || name === "dragover");
                if (name === "drop" && event.dataTransfer.files.length > 0) {
                    const input = drop.querySelector("input");
                    input.files = event.dataTransfer.files;
                    input.dispatchEvent(new Event("change", { bubbles: true }));
                }
            });
        }
    }
})();
