"""The shop file and its questions: does this jaw hold it, does this tool reach?"""
