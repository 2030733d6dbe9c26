@echo off
"%~dp0node\node.exe" "%~dp0app\out\main\packed-start.js"
if errorlevel 1 pause
