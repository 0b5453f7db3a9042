// A page is looked at large, and closed by Escape, its button or a touch beside it.
(() => {
    "use strict";
    const dialog = document.getElementById("large");
    document.addEventListener("click", event => {
        const page = event.target.closest("button.page");
        if (page) {
            const image = dialog.querySelector("img");
            image.src = page.dataset.large;
            image.alt = page.getAttribute("aria-label");
            dialog.showModal();
        } else if (event.target === dialog) {
            dialog.close();
        }
    });
})();
