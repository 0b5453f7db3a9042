@echo off
rem A terminal in the folder of the program.
cd /d "%~dp0"
echo Tagend. The first commands, each with Enter:
echo.
echo     tagend init                               makes your shop's own templates
echo     tagend print demo-orders\demo.csv --out first
echo     tagend --help
echo.
cmd /k
