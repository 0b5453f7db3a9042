#!/usr/bin/env bash
# Names every package that the program is built from, with its license, and gives the licenses: ./notices.sh > FILE
# Reads what the last build restored. A license that is not in licenses/ ends it with an error.
set -euo pipefail
cd "$(dirname "$0")"
assets=src/Tagend.Cli/obj/project.assets.json
[ -e $assets ] || { echo "build src/Tagend.Cli first" >&2; exit 1; }
packages=$(sed -nE 's|^ {6}"(/.*/)": \{\},?$|\1|p; s|^ {4}"(/.*/)": \{\},?$|\1|p' $assets | head -1)

cat <<'TEXT'
Tagend is built from these packages and carries their code. Each is used under the license named;
the texts of the licenses follow. The fonts in templates/fonts are Inter, under the license beside them.

TEXT
used=()
while read -r path; do
    spec=$(echo "$packages$path"/*.nuspec)
    field() { sed -nE "s|.*<$1( [^>]*)?>([^<]*)</$1>.*|\2|p" "$spec" | head -1; }
    license=$(field license)
    case "$license" in
        "MS-PL OR Apache-2.0") license=Apache-2.0 ;;
    esac
    [ -e "licenses/$license.txt" ] || { echo "$path: no text in licenses/ for \"$license\"" >&2; exit 1; }
    used+=("$license")
    copyright=$(field copyright)
    printf '%s %s\n    %s; %s; %s\n' "$(field id)" "$(field version)" "$license" "${copyright:-by $(field authors)}" "$(field projectUrl)"
done < <(sed -nE 's|^ {6}"path": "([a-z0-9].*)",$|\1|p' $assets | grep -v illink)
printf 'htmx 2.0.11\n    0BSD; by Big Sky Software; https://htmx.org/\n'
used+=(0BSD)
printf '.NET runtime and ASP.NET Core\n    MIT; © .NET Foundation and Contributors; https://dot.net/\n'
used+=(MIT)
for license in $(printf '%s\n' "${used[@]}" | sort -u); do
    printf '\n---- %s\n\n' "$license"
    cat "licenses/$license.txt"
done
for runtime in "$packages"/microsoft.netcore.app.runtime*/*/THIRD-PARTY-NOTICES.TXT; do
    [ -e "$runtime" ] || continue
    printf '\n---- what the .NET runtime contains\n\n'
    tr -d '\r' < "$runtime"
    break
done
for path in $(sed -nE 's|^ {6}"path": "(skiasharp.nativeassets.linux[^"]*)",$|\1|p' $assets); do
    printf '\n---- what SkiaSharp and HarfBuzzSharp contain\n\n'
    tr -d '\r' < "$packages$path/THIRD-PARTY-NOTICES.txt"
done
